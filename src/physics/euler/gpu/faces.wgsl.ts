/** The flux through each face for the shaders: see slopes.ts, faceFlux.ts and shockMarks.ts of the reference. */

export const FACES = /* wgsl */ `
/** Van Leer’s harmonic mean. */
fn slope(before: f32, here: f32, behind: f32) -> f32 {
  let back = here - before;
  let ahead = behind - here;
  let product = back * ahead;
  return select(0.0, 2.0 * product / (back + ahead), product > 0.0);
}

/** Half a slope on from a cell towards the one on its side; as in the cell where that is no state. */
fn towards(cell: u32, step: u32, sign: f32) -> Point {
  var point = pointIn(cell);
  if (withoutSlopes() || atomicLoad(&marks[flow.all + cell]) > 0u) { return point; }
  let before = pointIn(cell - step);
  let behind = pointIn(cell + step);
  let half = 0.5 * sign;
  let density = point.density + half * slope(before.density, point.density, behind.density);
  let pressure = point.pressure + half * slope(before.pressure, point.pressure, behind.pressure);
  if (!(density > 0.0) || !(pressure > 0.0)) { return point; }
  return Point(
    density,
    point.u + half * slope(before.u, point.u, behind.u),
    point.v + half * slope(before.v, point.v, behind.v),
    pressure,
    point.share + half * slope(before.share, point.share, behind.share),
  );
}

/** In the face’s own directions: through it and along it. */
fn turned(point: Point, nx: f32, ny: f32) -> Point {
  return Point(point.density, point.u * nx + point.v * ny, point.v * nx - point.u * ny, point.pressure, point.share);
}

fn energyOf(tangent: vec3f, density: f32, pressure: f32, moving: f32) -> f32 {
  return tangent.x * pressure + tangent.y * density + tangent.z + moving;
}

fn tangentIn(cell: u32) -> vec3f { return vec3f(value(V_kappa, cell), value(V_eta, cell), value(V_zeta, cell)); }

/** Mass, momentum through and along, energy as the cell before and as the one behind reckons it, share. */
struct Flux { mass: f32, through: f32, along: f32, before: f32, behind: f32, share: f32 }

fn fluxOf(l: Point, r: Point, tl: vec3f, tr: vec3f, apart: bool, shock: bool) -> Flux {
  let movingL = l.density * (l.u * l.u + l.v * l.v) / 2.0;
  let movingR = r.density * (r.u * r.u + r.v * r.v) / 2.0;
  let leftA = energyOf(tl, l.density, l.pressure, movingL);
  let rightB = energyOf(tr, r.density, r.pressure, movingR);
  let rightA = select(rightB, energyOf(tl, r.density, r.pressure, movingR), apart);
  let leftB = select(leftA, energyOf(tr, l.density, l.pressure, movingL), apart);
  // Outer speeds by Einfeldt.
  let squareL = ((tl.x + 1.0) * l.pressure + tl.z) / (tl.x * l.density);
  let squareR = ((tr.x + 1.0) * r.pressure + tr.z) / (tr.x * r.density);
  let wl = sqrt(l.density);
  let part = wl / (wl + sqrt(r.density));
  let jump = r.u - l.u;
  let mean = part * l.u + (1.0 - part) * r.u;
  let middle = sqrt(part * squareL + (1.0 - part) * squareR + part * (1.0 - part) * jump * jump / 2.0);
  let sl = min(l.u - sqrt(squareL), mean - middle);
  let sr = max(r.u + sqrt(squareR), mean + middle);
  if (sl >= 0.0) {
    let m = l.density * l.u;
    return Flux(m, m * l.u + l.pressure, m * l.v, (leftA + l.pressure) * l.u, (leftB + l.pressure) * l.u, m * l.share);
  }
  if (sr <= 0.0) {
    let m = r.density * r.u;
    return Flux(m, m * r.u + r.pressure, m * r.v, (rightA + r.pressure) * r.u, (rightB + r.pressure) * r.u, m * r.share);
  }
  if (shock) {
    // Across a strong shock: without the contact.
    let gl = sr / (sr - sl);
    let gr = -sl / (sr - sl);
    let g = sl * gl;
    let ml = l.density * l.u;
    let mr = r.density * r.u;
    return Flux(
      gl * ml + gr * mr + g * (r.density - l.density),
      gl * (ml * l.u + l.pressure) + gr * (mr * r.u + r.pressure) + g * (mr - ml),
      gl * ml * l.v + gr * mr * r.v + g * (r.density * r.v - l.density * l.v),
      gl * (leftA + l.pressure) * l.u + gr * (rightA + r.pressure) * r.u + g * (rightA - leftA),
      gl * (leftB + l.pressure) * l.u + gr * (rightB + r.pressure) * r.u + g * (rightB - leftB),
      gl * ml * l.share + gr * mr * r.share + g * (r.density * r.share - l.density * l.share),
    );
  }
  let ml = l.density * (sl - l.u);
  let mr = r.density * (sr - r.u);
  let sm = (r.pressure - l.pressure + l.u * ml - r.u * mr) / (ml - mr);
  if (sm >= 0.0) {
    let star = l.pressure + ml * (sm - l.u);
    let m = ml * sm / (sl - sm);
    let a = (((sl - l.u) * leftA - l.pressure * l.u + star * sm) / (sl - sm) + star) * sm;
    let b = (((sl - l.u) * leftB - l.pressure * l.u + star * sm) / (sl - sm) + star) * sm;
    return Flux(m, m * sm + star, m * l.v, a, b, m * l.share);
  }
  let star = r.pressure + mr * (sm - r.u);
  let m = mr * sm / (sr - sm);
  let a = (((sr - r.u) * rightA - r.pressure * r.u + star * sm) / (sr - sm) + star) * sm;
  let b = (((sr - r.u) * rightB - r.pressure * r.u + star * sm) / (sr - sm) + star) * sm;
  return Flux(m, m * sm + star, m * r.v, a, b, m * r.share);
}

/** Entries: cell before the face, step to the one behind, and 1: along the second index, 2: a wall ahead of the block, 4: behind it. */
@compute @workgroup_size(64)
fn faces(@builtin(global_invocation_id) id: vec3u) {
  if (id.x >= flow.faces || over() || brokeBefore(stage)) { return; }
  let entry = flow.facesAt + 3u * id.x;
  let a = lists[entry];
  let step = lists[entry + 1u];
  let kind = lists[entry + 2u];
  let b = a + step;
  let second = (kind & 1u) != 0u;
  let axes = select(2u, 5u, second);
  let nx = metric(axes, a);
  let ny = metric(axes + 1u, a);
  let area = metric(axes + 2u, a);
  var out = Flux(0.0, 0.0, 0.0, 0.0, 0.0, 0.0);
  // Faces without area let nothing through, whatever stands beside them.
  if (area > 0.0) {
    var l = turned(towards(a, step, 1.0), nx, ny);
    var r = turned(towards(b, step, -1.0), nx, ny);
    var tl = tangentIn(a);
    var tr = tangentIn(b);
    if ((kind & 2u) != 0u) {
      l = Point(r.density, -r.u, r.v, r.pressure, r.share);
      tl = tr;
    } else if ((kind & 4u) != 0u) {
      r = Point(l.density, -l.u, l.v, l.pressure, l.share);
      tr = tl;
    }
    let apart = abs(value(V_share, a) - value(V_share, b)) > OTHER_GAS;
    // A face of one index stands across shocks that lie across the other.
    let mark = select(2u, 1u, second);
    let shock = ((atomicLoad(&marks[a]) | atomicLoad(&marks[b])) & mark) != 0u;
    out = fluxOf(l, r, tl, tr, apart, shock);
  }
  let at = select(0u, 6u, second) * flow.all + a;
  flux[at] = out.mass * area;
  flux[at + flow.all] = (out.through * nx - out.along * ny) * area;
  flux[at + 2u * flow.all] = (out.through * ny + out.along * nx) * area;
  flux[at + 3u * flow.all] = out.before * area;
  flux[at + 4u * flow.all] = out.behind * area;
  flux[at + 5u * flow.all] = out.share * area;
}

fn isStrong(one: u32, other: u32) -> bool {
  let low = min(value(V_pressure, one), value(V_pressure, other));
  return max(value(V_pressure, one), value(V_pressure, other)) - low > STRONG * low;
}

/** Entries: whose mark, the cell that it is of, the row’s step there, and 1: the other block’s indices are the other way round. */
@compute @workgroup_size(64)
fn shocks(@builtin(global_invocation_id) id: vec3u) {
  if (id.x >= flow.marks || over() || brokeBefore(stage)) { return; }
  let entry = flow.marksAt + 4u * id.x;
  let source = lists[entry + 1u];
  let stride = lists[entry + 2u];
  let swapped = lists[entry + 3u] == 1u;
  let first = isStrong(source - 1u, source + 1u);
  let second = isStrong(source - stride, source + stride);
  let mark = select(0u, select(1u, 2u, swapped), first) | select(0u, select(2u, 1u, swapped), second);
  atomicStore(&marks[lists[entry]], mark);
}
`;
