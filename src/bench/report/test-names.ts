import type { TestName } from '../events/index.ts';

/** What each test is called, in the log, on the screen and on the report. */
export const TEST_NAMES: Readonly<Record<TestName, string>> = {
  'charge-log': 'Log of a charge',
  'heat-log': 'Log of heat',
  sound: 'Sound check',
  display: 'Display check',
  colour: 'Colour of the shell',
};

/** The name under which a log of a charge keeps what is printed on the cell, A h. */
export const PRINTED_CAPACITY = 'Printed capacity';
