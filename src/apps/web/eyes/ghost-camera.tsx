import { useEffect, useRef, useState } from 'react';

interface GhostCameraProps {
  /** The reference that shines through; null where there is none. */
  readonly ghost: string | null;
  readonly onPhoto: (photo: File) => void;
}

/** As many px as the camera gives, up to this. */
const WIDEST_PX = 4096;
const JPEG_QUALITY = 0.92;

type Camera =
  { readonly is: 'off' } | { readonly is: 'asking' } | { readonly is: 'on'; readonly stream: MediaStream } | { readonly is: 'refused' };

/** The camera of this device with the reference shining through. It is asked for only when the person wants it, and let go of with the page. */
export function GhostCamera({ ghost, onPhoto }: GhostCameraProps) {
  const [camera, setCamera] = useState<Camera>({ is: 'off' });
  const [strength, setStrength] = useState(0.35);
  const video = useRef<HTMLVideoElement>(null);
  useEffect(() => {
    if (camera.is !== 'on') return undefined;
    if (video.current) video.current.srcObject = camera.stream;
    return () => camera.stream.getTracks().forEach((track) => track.stop());
  }, [camera]);
  const start = async (): Promise<void> => {
    setCamera({ is: 'asking' });
    setCamera(await openCamera());
  };
  const take = async (): Promise<void> => {
    const photo = video.current && (await stillOf(video.current));
    if (photo) onPhoto(photo);
  };
  if (camera.is !== 'on')
    return (
      <>
        {camera.is === 'refused' && (
          <p role="alert">
            This page gets no camera here: it needs your leave and a safe address (https, or this machine itself). Take the photo with the
            camera’s own app instead.
          </p>
        )}
        {ghost && <img className="capture-reference" src={ghost} alt="The reference: hold the camera so that the board lies like this" />}
        <button type="button" className="main" disabled={camera.is === 'asking'} onClick={() => void start()}>
          Use the camera with the reference shining through
        </button>
      </>
    );
  return (
    <>
      <div className="capture-stage">
        <video ref={video} autoPlay playsInline muted aria-label="What the camera sees" />
        {ghost && <img className="capture-ghost" src={ghost} alt="" style={{ opacity: strength }} />}
      </div>
      {ghost && <GhostSlider value={strength} onChange={setStrength} />}
      <button type="button" className="main" onClick={() => void take()}>
        Take the photo
      </button>
    </>
  );
}

export function GhostSlider({ value, onChange }: { readonly value: number; readonly onChange: (value: number) => void }) {
  return (
    <label className="eyes-slider">
      <span>How much the reference shines through</span>
      <input type="range" min={0} max={1} step={0.05} value={value} onChange={(event) => onChange(Number(event.target.value))} />
    </label>
  );
}

async function openCamera(): Promise<Camera> {
  // A page without a safe address has no media devices at all, whatever the types say.
  const devices = navigator.mediaDevices as MediaDevices | undefined;
  const wanted = { video: { facingMode: 'environment', width: { ideal: WIDEST_PX } }, audio: false };
  const stream = await devices?.getUserMedia(wanted).catch(() => null);
  return stream ? { is: 'on', stream } : { is: 'refused' };
}

async function stillOf(video: HTMLVideoElement): Promise<File | null> {
  const canvas = document.createElement('canvas');
  Object.assign(canvas, { width: video.videoWidth, height: video.videoHeight });
  canvas.getContext('2d')!.drawImage(video, 0, 0);
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/jpeg', JPEG_QUALITY));
  return blob && new File([blob], 'board.jpg', { type: 'image/jpeg' });
}
