import { b } from './catalogue/t';
export const c = b;
export const d = document;
