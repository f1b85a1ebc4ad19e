export { handsOn } from '../e2e/hands.ts';
export { photograph } from '../support/photograph.ts';
