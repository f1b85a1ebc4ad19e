export { default } from '../html.ts';
