/** Where the linear part of the altitude scale ends [km]; above it there is only vacuum. */
export const topOfScale = 40;
