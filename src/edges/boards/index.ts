export { openBoards, type BoardOptions } from './open-boards.ts';
