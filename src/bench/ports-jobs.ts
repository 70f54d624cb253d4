/** A job that took long, or failed, as the owner of the bench is shown it. Nothing of what it was about is in it. */
export interface JobNote {
  readonly name: string;
  readonly at: string;
  readonly seconds: number;
  /** What kind of trouble it ended in; null when it was done. */
  readonly error: string | null;
}

export interface JobReport {
  /** Jobs that wait or are being done. */
  readonly waiting: number;
  /** Jobs of late that took longest, the longest first. */
  readonly slow: readonly JobNote[];
  /** Jobs of late that failed, the newest first. */
  readonly failed: readonly JobNote[];
}

/**
 * Work that takes seconds, done beside everything else, one job of a name after the other in each process that does them. Jobs and answers are plain
 * data, as a worker thread takes it.
 */
export interface JobQueue {
  /** From now on this process does jobs of that name. */
  serve<Job, Answer>(name: string, work: (job: Job) => Promise<Answer>): Promise<void>;
  /** Resolves to the answer, rejects when the job failed. A job that is asked for again while it waits or is done is done once. */
  ask<Job, Answer>(name: string, job: Job): Promise<Answer>;
  report(): Promise<JobReport>;
  /** Waits for the job that is being done here. */
  close(): Promise<void>;
}
