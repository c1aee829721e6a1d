/** A real Chromium or Chrome for the tests, found as the program finds it. */
export { launchChromium } from '../../src/faces/film/chromium.ts';
