/* Runs in a page of a browser: draws a scene with three.js and gives the picture as a PNG. */
import * as THREE from 'three';

const PAINT_PX_PER_MM = 36;
const SIDES = 28;

/** A picture of `specimen` as `camera` sees it under `light`, as a data URL of a PNG; lens, grain and focus are added afterwards. */
export function drawScene({ specimen, camera, light, ground, finishes }) {
  const renderer = rendererOf(camera);
  const scene = new THREE.Scene();
  const tint = new THREE.Color(...light.tint);
  scene.environment = surroundings(renderer);
  const [lampX, lampY] = light.lamps[0].at;
  scene.environmentRotation.z = Math.atan2(-lampY, lampX);
  scene.environmentIntensity = light.ambient;
  for (const lamp of light.lamps) scene.add(...lampOf(lamp, specimen, tint));
  scene.add(groundOf(specimen, ground), boardOf(specimen, renderer));
  for (const mesh of solidMeshes(specimen.groups, finishes)) scene.add(mesh);
  for (const mesh of printMeshes(specimen)) scene.add(mesh);
  renderer.render(scene, cameraOf(camera));
  const url = renderer.domElement.toDataURL('image/png');
  forget(scene);
  return url;
}

/** Compiling takes longer than drawing, so what was compiled is kept from scene to scene. */
const kept = { materials: new Map() };

function rendererOf({ width, height }) {
  kept.renderer ??= newRenderer();
  kept.renderer.setSize(width, height);
  return kept.renderer;
}

function materialOf(name, properties) {
  if (!kept.materials.has(name)) kept.materials.set(name, new THREE.MeshStandardMaterial(properties));
  return Object.assign(kept.materials.get(name), properties);
}

function newRenderer() {
  const renderer = new THREE.WebGLRenderer({ antialias: true, preserveDrawingBuffer: true });
  renderer.setPixelRatio(1);
  renderer.shadowMap.enabled = true;
  renderer.shadowMap.type = THREE.PCFSoftShadowMap;
  renderer.toneMapping = THREE.ACESFilmicToneMapping;
  renderer.toneMappingExposure = 1;
  return renderer;
}

/** Gives back what a drawn scene holds on the graphics side. */
function forget(scene) {
  scene.traverse((each) => {
    each.geometry?.dispose();
    each.shadow?.dispose();
    for (const material of [each.material ?? []].flat()) material.map?.dispose();
  });
}

/** The board's frame has y downwards; here it is upwards. */
const inWorld = ([x, y, z]) => new THREE.Vector3(x, -y, z);

function cameraOf({ eye, right, down, axis, focalPx, distance, width, height }) {
  const fov = (2 * Math.atan(height / 2 / focalPx) * 180) / Math.PI;
  const camera = new THREE.PerspectiveCamera(fov, width / height, distance * 0.5, distance * 1.6);
  const basis = new THREE.Matrix4().makeBasis(inWorld(right), inWorld(down).negate(), inWorld(axis));
  camera.quaternion.setFromRotationMatrix(basis);
  camera.position.copy(inWorld(eye));
  camera.updateMatrixWorld();
  return camera;
}

function lampOf({ at, power, hasShadow }, { width, height }, tint) {
  const lamp = new THREE.DirectionalLight(tint, power);
  lamp.position.set(width / 2 + at[0], -height / 2 - at[1], at[2]);
  lamp.target.position.set(width / 2, -height / 2, 0);
  lamp.castShadow = hasShadow;
  const reach = Math.hypot(width, height) / 2 + 6;
  Object.assign(lamp.shadow.camera, { left: -reach, right: reach, top: reach, bottom: -reach, near: 50, far: 600 });
  lamp.shadow.mapSize.set(1536, 1536);
  lamp.shadow.radius = 3;
  lamp.shadow.bias = -0.0005;
  lamp.shadow.normalBias = 0.04;
  return [lamp, lamp.target];
}

/**
 * A dim room with a bright ceiling, one window and one bright panel, for what shines. It is made once and turned so that the panel is where the first lamp is; the
 * lamps themselves shine on their own.
 */
function surroundings(renderer) {
  if (kept.surroundings) return kept.surroundings;
  const room = new THREE.Scene();
  const wall = (colour, at, size) => {
    const mesh = new THREE.Mesh(
      new THREE.BoxGeometry(...size),
      new THREE.MeshBasicMaterial({ color: new THREE.Color(...colour), side: THREE.DoubleSide }),
    );
    mesh.position.set(...at);
    room.add(mesh);
  };
  wall([0.32, 0.31, 0.3], [0, 0, 0], [1600, 1600, 1600]);
  wall([0.62, 0.62, 0.6], [0, 0, 780], [1300, 1300, 10]);
  wall([0.08, 0.08, 0.09], [-520, 300, 200], [60, 700, 700]);
  wall([0.5, 0.55, 0.62], [-300, -760, 250], [380, 10, 380]);
  wall([9, 9, 8.6], [560, 0, 640], [150, 150, 10]);
  const maker = new THREE.PMREMGenerator(renderer);
  kept.surroundings = maker.fromScene(room, 0, 1, 2000, { size: 64 }).texture;
  maker.dispose();
  return kept.surroundings;
}

function groundOf({ width, height }, colour) {
  const mesh = new THREE.Mesh(
    new THREE.PlaneGeometry(width * 8, height * 8),
    materialOf('ground', { color: new THREE.Color(colour), roughness: 0.95 }),
  );
  mesh.position.set(width / 2, -height / 2, -3);
  mesh.receiveShadow = true;
  return mesh;
}

function boardOf(specimen, renderer) {
  const { width, height } = specimen;
  const texture = paintedTexture(specimen.width, specimen.height, [...specimen.paint, ...specimen.films]);
  texture.anisotropy = Math.min(8, renderer.capabilities.getMaxAnisotropy());
  const face = materialOf('face', { map: texture, roughness: 0.38 });
  const side = materialOf('side', { color: new THREE.Color('#8d8a5c'), roughness: 0.8 });
  const mesh = new THREE.Mesh(new THREE.BoxGeometry(width, height, 1.6), [side, side, side, side, face, side]);
  mesh.position.set(width / 2, -height / 2, -0.8);
  mesh.receiveShadow = true;
  mesh.castShadow = true;
  return mesh;
}

const pathOf = (d) => new Path2D(d);

function paintedTexture(width, height, paint, pxPerMm = PAINT_PX_PER_MM) {
  const canvas = Object.assign(document.createElement('canvas'), {
    width: Math.round(width * pxPerMm),
    height: Math.round(height * pxPerMm),
  });
  const pen = canvas.getContext('2d');
  pen.scale(canvas.width / width, canvas.height / height);
  pen.lineCap = 'round';
  pen.lineJoin = 'round';
  for (const { d, fill, stroke, width: line, opacity = 1 } of paint) {
    Object.assign(pen, { globalAlpha: opacity, fillStyle: fill ?? stroke, strokeStyle: stroke ?? fill, lineWidth: line ?? 0 });
    if (stroke) pen.stroke(pathOf(d));
    else pen.fill(pathOf(d));
  }
  const texture = new THREE.CanvasTexture(canvas);
  texture.colorSpace = THREE.SRGBColorSpace;
  return texture;
}

/** All solids of one finish in one mesh, with their colours at the corners. */
function solidMeshes(groups, finishes) {
  const byFinish = new Map(Object.keys(finishes).map((name) => [name, { position: [], normal: [], color: [] }]));
  for (const { pose, solids } of groups)
    for (const solid of solids) append(byFinish.get(solid.finish), solid, poseMatrix(pose, heightOf(solids)));
  return [...byFinish]
    .filter(([, { position }]) => position.length > 0)
    .map(([name, arrays]) => {
      const geometry = new THREE.BufferGeometry();
      for (const [key, values] of Object.entries(arrays)) geometry.setAttribute(key, new THREE.Float32BufferAttribute(values, 3));
      const [roughness, metalness] = finishes[name];
      const mesh = new THREE.Mesh(geometry, materialOf(name, { vertexColors: true, roughness, metalness }));
      mesh.castShadow = true;
      mesh.receiveShadow = true;
      return mesh;
    });
}

const heightOf = (solids) => Math.max(0, ...solids.map(({ at, size }) => at[2] + size[2]));

/** A leaning part stands on its lower edge. */
function poseMatrix({ x, y, turn, leanDeg }, high) {
  const lean = (leanDeg * Math.PI) / 180;
  const lift = leanDeg === 0 ? 0 : Math.sin(lean) * Math.max(0.4, high);
  return new THREE.Matrix4()
    .makeTranslation(x, -y, lift)
    .multiply(new THREE.Matrix4().makeRotationZ((-turn * Math.PI) / 180))
    .multiply(new THREE.Matrix4().makeRotationY(-lean));
}

function append(arrays, solid, matrix) {
  const geometry = SHAPES[solid.form](solid);
  if (solid.turn) geometry.rotateZ((solid.turn * Math.PI) / 180);
  geometry.translate(solid.at[0], -solid.at[1], solid.at[2]);
  geometry.applyMatrix4(matrix);
  const flat = geometry.index ? geometry.toNonIndexed() : geometry;
  const colour = new THREE.Color(solid.colour);
  const count = flat.attributes.position.count;
  for (const key of ['position', 'normal']) for (const value of flat.attributes[key].array) arrays[key].push(value);
  for (let i = 0; i < count; i++) arrays.color.push(colour.r, colour.g, colour.b);
}

const SHAPES = {
  prism({ size: [w, d, h], top: [sx, sy], lean: [lx, ly] }) {
    const geometry = new THREE.BoxGeometry(w, d, h).translate(0, 0, h / 2).toNonIndexed();
    const { array } = geometry.attributes.position;
    for (let i = 0; i < array.length; i += 3) {
      if (array[i + 2] < h / 2) continue;
      array[i] = array[i] * sx + lx;
      array[i + 1] = array[i + 1] * sy - ly;
    }
    geometry.computeVertexNormals();
    return geometry;
  },
  round: ({ size: [w, d, h] }) =>
    new THREE.CylinderGeometry(0.5, 0.5, h, SIDES)
      .rotateX(Math.PI / 2)
      .scale(w, d, 1)
      .translate(0, 0, h / 2),
  dome: ({ size: [w, d, h] }) =>
    new THREE.SphereGeometry(0.5, 14, 7, 0, 2 * Math.PI, 0, Math.PI / 2).rotateX(Math.PI / 2).scale(w, d, 2 * h),
};

/** What is printed on tops of parts, each on its own small plane. */
function printMeshes({ prints, groups }) {
  return prints.map(({ ref, size: [w, h], z, paths, stroke, width }) => {
    const { pose } = groups.find((group) => group.ref === ref);
    const moved = paths.map((d) => ({ d, stroke, width }));
    const texture = printTexture(w, h, moved);
    const mesh = new THREE.Mesh(
      new THREE.PlaneGeometry(w, h).translate(0, 0, z),
      materialOf(`print ${ref}`, { map: texture, transparent: true, roughness: 0.6 }),
    );
    mesh.applyMatrix4(poseMatrix(pose, z));
    return mesh;
  });
}

function printTexture(w, h, paint) {
  const pxPerMm = 40;
  const canvas = Object.assign(document.createElement('canvas'), { width: Math.round(w * pxPerMm), height: Math.round(h * pxPerMm) });
  const pen = canvas.getContext('2d');
  pen.scale(pxPerMm, pxPerMm);
  pen.translate(w / 2, h / 2);
  pen.lineCap = 'round';
  for (const { d, stroke, width } of paint) Object.assign(pen, { strokeStyle: stroke, lineWidth: width }).stroke(pathOf(d));
  const texture = new THREE.CanvasTexture(canvas);
  texture.colorSpace = THREE.SRGBColorSpace;
  return texture;
}
