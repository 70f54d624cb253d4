import { connect, type Socket } from 'node:net';

export type LineFailure = 'not-reached' | 'timed-out' | 'closed' | 'answer-too-long';

/** What went wrong on the line; never leaves this edge. */
export class LineError extends Error {
  constructor(
    readonly code: LineFailure,
    detail: string,
  ) {
    super(detail);
    this.name = 'LineError';
  }
}

const LONGEST_ANSWER = 4096;

/** A connection that is asked line by line; each answer ends with a line feed. Every wait ends within its time. */
export class LineSocket {
  private held = '';
  private failed: LineError | undefined;
  private wake: (() => void) | undefined;

  private constructor(private readonly socket: Socket) {
    socket.setEncoding('utf8');
    socket.setNoDelay(true);
    socket.on('data', (text: string) => this.take(text));
    socket.on('error', (error) => this.fail(new LineError('closed', error.message)));
    socket.on('close', () => this.fail(new LineError('closed', 'the connection was closed')));
  }

  static open(host: string, port: number, withinMs: number): Promise<LineSocket> {
    return new Promise((resolve, reject) => {
      const socket = connect({ host, port });
      const timer = setTimeout(() => stop(new LineError('not-reached', `no connection within ${withinMs} ms`)), withinMs);
      const stop = (error: LineError): void => {
        clearTimeout(timer);
        socket.destroy();
        reject(error);
      };
      const refused = (error: Error): void => stop(new LineError('not-reached', error.message));
      socket.once('error', refused);
      socket.once('connect', () => {
        clearTimeout(timer);
        socket.off('error', refused);
        resolve(new LineSocket(socket));
      });
    });
  }

  /** Sends a question and waits for one line. Throws `LineError`. */
  async ask(question: string, withinMs: number): Promise<string> {
    this.socket.write(`${question}\n`);
    const timer = setTimeout(() => this.fail(new LineError('timed-out', `no answer to ${question} within ${withinMs} ms`)), withinMs);
    try {
      for (;;) {
        const end = this.held.indexOf('\n');
        if (end >= 0) return this.cut(end);
        if (this.failed) throw this.failed;
        await new Promise<void>((resolve) => (this.wake = resolve));
      }
    } finally {
      clearTimeout(timer);
    }
  }

  close(): void {
    this.socket.destroy();
  }

  private cut(end: number): string {
    const line = this.held.slice(0, end).trim();
    this.held = this.held.slice(end + 1);
    return line;
  }

  private take(text: string): void {
    this.held += text;
    if (this.held.length > LONGEST_ANSWER) this.fail(new LineError('answer-too-long', `more than ${LONGEST_ANSWER} characters`));
    this.wake?.();
  }

  private fail(error: LineError): void {
    this.failed ??= error;
    this.wake?.();
  }
}
