/** Pages and files made from an exam. Pure: text in, text out. */
export { cautionsFor } from './cautions.ts';
export { exportExam, itemsCsv } from './export.ts';
export type { Sheet } from './letter.ts';
export { ownerPage } from './owner.ts';
export { paperStyle } from './style.ts';
export { vetLetter } from './vet.ts';
