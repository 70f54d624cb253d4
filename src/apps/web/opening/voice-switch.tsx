import type { Voice } from './use-voice.ts';

/** Turns listening on and off, with a plain sign while it listens, and what it means before it is turned on. */
export function VoiceSwitch({ voice }: { readonly voice: Voice }) {
  if (!voice.exists) return <p className="small muted">This browser cannot listen: tick by the button.</p>;
  return (
    <div className="form">
      {voice.isOn ? (
        <output className="listening">
          <span aria-hidden="true">●</span> Listening. Say “done” to tick this step, “stop” to end it.
        </output>
      ) : (
        <p className="small muted">
          Tick by voice: the browser listens, and some browsers send what they hear to a service of their maker. It is off until you turn it
          on, and ends with this page. Salvor itself sends and keeps nothing of it.
        </p>
      )}
      {voice.trouble !== '' && <p role="alert">{voice.trouble}</p>}
      <button type="button" aria-pressed={voice.isOn} onClick={voice.isOn ? voice.turnOff : voice.turnOn}>
        {voice.isOn ? 'Stop listening' : 'Listen for “done”'}
      </button>
    </div>
  );
}
