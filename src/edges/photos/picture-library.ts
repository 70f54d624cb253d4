import { loadOpenCV, type OpenCV } from '@opencvjs/node';
import type { Features, FeatureKind, GreyBytes, Homography, Matches, PictureLibrary } from '../../core/vision/picture-library.ts';

type Cv = typeof OpenCV;
/** What the library has but its types do not tell. */
interface Untyped {
  readonly ORB: new (...settings: number[]) => Detector;
  readonly AKAZE: new () => Detector & { setThreshold(value: number): void };
  readonly KeyPointVector: new () => KeyPoints;
  readonly DMatchVectorVector: new () => MatchLists;
  readonly USAC_MAGSAC: number;
}
interface Deletable {
  delete(): void;
}
interface Detector extends Deletable {
  detectAndCompute(image: unknown, mask: unknown, points: KeyPoints, descriptors: unknown): void;
}
interface KeyPoints extends Deletable {
  size(): number;
  get(i: number): { pt: { x: number; y: number }; angle: number; size: number; response: number };
}
interface MatchLists extends Deletable {
  size(): number;
  get(i: number): { size(): number; get(k: number): { queryIdx: number; trainIdx: number; distance: number } } & Deletable;
}

/**
 * The picture methods of core/vision by OpenCV, compiled to WebAssembly: oriented FAST corners with rotated binary descriptors, and accelerated KAZE blobs;
 * maps by MAGSAC. Loads in some half a second, once a thread. Everything taken from its heap is given back before a call returns.
 */
export async function openPictureLibrary(): Promise<PictureLibrary> {
  const cv = await loadOpenCV();
  return new OpenCvLibrary(cv, cv as unknown as Untyped);
}

class OpenCvLibrary implements PictureLibrary {
  constructor(
    private readonly cv: Cv,
    private readonly more: Untyped,
  ) {}

  features(picture: GreyBytes, kind: FeatureKind, count: number): Features {
    const { cv, more } = this;
    return borrowing((keep) => {
      const image = keep(new cv.Mat(picture.height, picture.width, cv.CV_8UC1));
      image.data.set(picture.data);
      const detector = keep(kind === 'corners' ? new more.ORB(count, 1.2, 8, 20, 0, 2, 0, 31, 12) : new more.AKAZE());
      const points = keep(new more.KeyPointVector());
      const descriptors = keep(new cv.Mat());
      detector.detectAndCompute(image, keep(new cv.Mat()), points, descriptors);
      return strongest(points, descriptors.data, descriptors.cols, count);
    });
  }

  matches(a: Features, b: Features, nearest: number): Matches {
    const { cv, more } = this;
    return borrowing((keep) => {
      const [query, train] = [a, b].map(({ count, bytes, descriptors }) => {
        const mat = keep(new cv.Mat(count, bytes, cv.CV_8UC1));
        mat.data.set(descriptors);
        return mat;
      });
      const lists = keep(new more.DMatchVectorVector());
      const matcher = keep(new cv.BFMatcher(cv.NORM_HAMMING, false)) as unknown as {
        knnMatch(q: unknown, t: unknown, out: MatchLists, k: number): void;
      };
      matcher.knnMatch(query, train, lists, nearest);
      return flattened(lists);
    });
  }

  homography(from: Float32Array, to: Float32Array, withinPx: number): Homography | null {
    const { cv, more } = this;
    return borrowing((keep) => {
      const [source, target] = [from, to].map((points) => {
        const mat = keep(new cv.Mat(points.length / 2, 1, cv.CV_32FC2));
        mat.data32F.set(points);
        return mat;
      });
      const h = keep(cv.findHomography(source!, target!, more.USAC_MAGSAC, withinPx, keep(new cv.Mat())));
      if (h.rows !== 3) return null;
      const values = [...h.data64F].map((value) => value / h.data64F[8]!);
      return values.every(Number.isFinite) ? (values as unknown as Homography) : null;
    });
  }
}

/** Runs `work`; what it keeps is deleted afterwards, come what may. */
function borrowing<Result>(work: (keep: <T extends Deletable>(thing: T) => T) => Result): Result {
  const kept: Deletable[] = [];
  try {
    return work((thing) => {
      kept.push(thing);
      return thing;
    });
  } finally {
    for (const thing of kept.toReversed()) thing.delete();
  }
}

function strongest(points: KeyPoints, descriptors: Uint8Array, bytes: number, count: number): Features {
  const all = Array.from({ length: points.size() }, (_, i) => ({ i, ...points.get(i) }));
  const kept = all.length > count ? all.sort((a, b) => b.response - a.response).slice(0, count) : all;
  const out = {
    count: kept.length,
    x: Float32Array.from(kept, ({ pt }) => pt.x),
    y: Float32Array.from(kept, ({ pt }) => pt.y),
    angleRad: Float32Array.from(kept, ({ angle }) => (angle * Math.PI) / 180),
    sizePx: Float32Array.from(kept, ({ size }) => size),
    bytes,
    descriptors: new Uint8Array(kept.length * bytes),
  };
  kept.forEach(({ i }, k) => out.descriptors.set(descriptors.subarray(i * bytes, (i + 1) * bytes), k * bytes));
  return out;
}

function flattened(lists: MatchLists): Matches {
  const from: number[] = [];
  const to: number[] = [];
  const bits: number[] = [];
  const rank: number[] = [];
  for (let i = 0; i < lists.size(); i++) {
    const list = lists.get(i);
    for (let k = 0; k < list.size(); k++) {
      const { queryIdx, trainIdx, distance } = list.get(k);
      from.push(queryIdx);
      to.push(trainIdx);
      bits.push(distance);
      rank.push(k);
    }
    list.delete();
  }
  return { from: Int32Array.from(from), to: Int32Array.from(to), bits: Float32Array.from(bits), rank: Uint8Array.from(rank) };
}
