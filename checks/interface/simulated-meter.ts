import { createServer, type AddressInfo, type Server } from 'node:net';

/** A meter on the loopback that answers SCPI line by line: who it is, one measured value, no error. */
export async function simulatedMeter(measured: string): Promise<{ readonly address: string; close(): Promise<void> }> {
  const server: Server = createServer((socket) => {
    let held = '';
    socket.on('error', () => socket.destroy());
    socket.on('data', (bytes) => {
      held += bytes.toString();
      for (let end = held.indexOf('\n'); end >= 0; end = held.indexOf('\n')) {
        const question = held.slice(0, end).trim();
        held = held.slice(end + 1);
        socket.write(
          `${question === '*IDN?' ? 'Invented Bench Works,BM-3,0042,1.07' : question === 'SYST:ERR?' ? '0,"No error"' : measured}\n`,
        );
      }
    });
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return {
    address: `127.0.0.1:${(server.address() as AddressInfo).port}`,
    close: () => new Promise((resolve) => void server.close(() => resolve())),
  };
}
