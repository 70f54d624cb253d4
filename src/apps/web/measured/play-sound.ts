/** Levels for the ears: far below full, so that nobody is startled by a headphone. */
const GAIN = 0.2;
const FADE_S = 0.05;

/** Plays one steady tone through this device; ends by itself. */
export const playTone = (hertz: number, seconds: number): void => play(hertz, hertz, seconds);

/** Plays a sweep from low to high, each octave as long as the other; ends by itself. */
export const playSweep = (from: number, to: number, seconds: number): void => play(from, to, seconds);

function play(from: number, to: number, seconds: number): void {
  const context = new AudioContext();
  const oscillator = context.createOscillator();
  const gain = context.createGain();
  const now = context.currentTime;
  oscillator.frequency.setValueAtTime(from, now);
  oscillator.frequency.exponentialRampToValueAtTime(to, now + seconds);
  gain.gain.setValueAtTime(0, now);
  gain.gain.linearRampToValueAtTime(GAIN, now + FADE_S);
  gain.gain.setValueAtTime(GAIN, now + seconds - FADE_S);
  gain.gain.linearRampToValueAtTime(0, now + seconds);
  oscillator.connect(gain).connect(context.destination);
  oscillator.addEventListener('ended', () => void context.close());
  oscillator.start(now);
  oscillator.stop(now + seconds);
}
