/** Samples within ±1 and how many of them make a second. */
export interface Sound {
  readonly samples: Float32Array | Float64Array;
  readonly sampleRate: number;
}

export type Recorded = { readonly ok: true; readonly sound: Sound } | { readonly ok: false; readonly message: string };

/** The longest stretch that the browser gives at once: two thirds of a second at 48 kHz. */
const SAMPLES = 32_768;
/** The microphone settles before it counts. */
const SETTLE_MS = 900;

/** A stretch of what the microphone hears, as it is: without the echo, noise and level control of calls. */
export async function recordSound(): Promise<Recorded> {
  if (!navigator.mediaDevices?.getUserMedia)
    return {
      ok: false,
      message: 'This browser gives a page the microphone only over https or on the same machine. Record a WAV instead, and choose it.',
    };
  let stream: MediaStream;
  try {
    stream = await navigator.mediaDevices.getUserMedia({
      audio: { echoCancellation: false, noiseSuppression: false, autoGainControl: false },
    });
  } catch {
    return { ok: false, message: 'The microphone was not given. Allow it for this page, or choose a WAV instead.' };
  }
  const context = new AudioContext();
  try {
    const analyser = context.createAnalyser();
    analyser.fftSize = SAMPLES;
    context.createMediaStreamSource(stream).connect(analyser);
    await new Promise((resolve) => setTimeout(resolve, SETTLE_MS + (1000 * SAMPLES) / context.sampleRate));
    const samples = new Float32Array(SAMPLES);
    analyser.getFloatTimeDomainData(samples);
    return { ok: true, sound: { samples, sampleRate: context.sampleRate } };
  } finally {
    for (const track of stream.getTracks()) track.stop();
    void context.close();
  }
}
