export { cutView } from './figureCutView.ts';
export { impulseOverAltitude, thrustOverAltitude } from './figureOverAltitude.ts';
