export type Random = () => number;
export type PointMm = readonly [number, number, number];

export interface RenderedPart {
  readonly ref: string;
  readonly kind: string;
  readonly value: string;
  readonly x: number;
  readonly y: number;
  readonly turn: number;
}
export interface RenderedBoard {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly mask: string;
  readonly parts: readonly RenderedPart[];
  readonly vias: readonly { readonly x: number; readonly y: number }[];
  readonly holes: readonly { readonly x: number; readonly y: number }[];
}
export interface PlantedFault {
  readonly fault: 'gone' | 'moved' | 'bridged' | 'splash' | 'stained' | 'torn';
  readonly kind: 'missing' | 'added' | 'moved' | 'stain' | 'damaged';
  readonly ref?: string;
  readonly corners: readonly PointMm[];
}
export interface CameraPose {
  readonly tiltDeg: number;
  readonly towardDeg: number;
  readonly turnDeg: number;
  readonly fill: number;
  readonly shift?: readonly [number, number];
  readonly isScan?: boolean;
  readonly bend?: number;
}
export interface BoardCamera {
  readonly focalPx: number;
  readonly width: number;
  readonly height: number;
}
export interface RoomLamps {
  readonly angleDeg: number;
  readonly count: 1 | 2;
  readonly warmth: number;
  readonly isScan?: boolean;
}
export interface Studio {
  draw(scene: unknown): Promise<Buffer>;
  close(): Promise<void>;
}

export function boardOfPlacement(given: {
  readonly name: string;
  readonly placement: string;
  readonly width: number;
  readonly height: number;
  readonly mask: string;
  readonly random: Random;
}): RenderedBoard;
export function randomBoard(name: string, random: Random): RenderedBoard;
export function cameraOver(board: RenderedBoard, size: { readonly width: number; readonly height: number }, pose: CameraPose): BoardCamera;
export function degreesApart(a: BoardCamera, b: BoardCamera): number;
export function seenAt(camera: BoardCamera, point: PointMm): [number, number];
export function plantFaults(board: RenderedBoard, count: number, random: Random): PlantedFault[];
export function courtOf(kind: string): [number, number];
export function heightOf(part: RenderedPart): number;
export function openStudio(): Promise<Studio | undefined>;
export function takePhoto(
  studio: Studio,
  photo: {
    readonly board: RenderedBoard;
    readonly faults: readonly PlantedFault[];
    readonly camera: BoardCamera;
    readonly lamps: RoomLamps;
    readonly random: Random;
  },
): Promise<Buffer>;
