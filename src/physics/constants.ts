/** Molar gas constant R [J/(mol K)], exact since the 2019 revision of the SI (CODATA 2018). */
export const MOLAR_GAS_CONSTANT = 8.31446261815324;
/** Standard acceleration of gravity g0 [m/s²], exact by definition (3rd CGPM, 1901). */
export const STANDARD_GRAVITY = 9.80665;
/** Standard atmosphere [Pa], exact by definition (10th CGPM, 1954). */
export const STANDARD_ATMOSPHERE = 101325;
