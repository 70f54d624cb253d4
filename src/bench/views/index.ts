export * from './rows.ts';
export * from './answers.ts';
