export { default } from '../pdf.ts';
