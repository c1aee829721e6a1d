/** What lies beyond the sides, for the shaders: see ghosts.ts, openSides.ts and corners.ts of the reference. */

export const GHOSTS_SHADER = /* wgsl */ `
fn copyCell(to: u32, source: u32) {
  for (var kind = 0u; kind < 9u; kind++) { put(kind, to, value(kind, source)); }
}

fn mirror(ghost: u32, inside: u32, nx: f32, ny: f32) {
  copyCell(ghost, inside);
  let through = value(V_u, inside) * nx + value(V_v, inside) * ny;
  put(V_u, ghost, value(V_u, inside) - 2.0 * through * nx);
  put(V_v, ghost, value(V_v, inside) - 2.0 * through * ny);
}

fn carriedOn(kind: u32, inside: u32, next: u32, layer: u32) -> f32 {
  return value(kind, inside) + f32(layer + 1u) * (value(kind, inside) - value(kind, next));
}

fn airAt(at: u32) -> Point {
  return Point(numbers[at], numbers[at + 1u], numbers[at + 2u], numbers[at + 3u], numbers[at + 4u]);
}

/** One-dimensional characteristics across the side. */
fn farPoint(inside: u32, air: Point, nx: f32, ny: f32) -> Point {
  let own = pointIn(inside);
  let sound = soundSpeed(inside);
  let out = own.u * nx + own.v * ny;
  if (out >= sound) { return own; }
  if (out <= -sound) { return air; }
  let stiff = own.density * sound;
  let met = (own.pressure + air.pressure + stiff * (out - (air.u * nx + air.v * ny))) / 2.0;
  let speed = out + (own.pressure - met) / stiff;
  var comes = own;
  if (out < 0.0) { comes = air; }
  let along = comes.v * nx - comes.u * ny;
  let there = comes.density + (met - comes.pressure) / (sound * sound);
  if (!(met > 0.0) || !(there > 0.0)) { return Point(comes.density, comes.u, comes.v, air.pressure, comes.share); }
  return Point(there, speed * nx - along * ny, speed * ny + along * nx, met, comes.share);
}

/** Density and speed of a chamber's gas. @param root √(1 − p/p₀), at even places of which they stand behind two numbers */
fn fedAt(at: u32, root: f32) -> vec2f {
  let place = root * f32(RESERVOIR_PLACES - 1u);
  let first = min(u32(place), RESERVOIR_PLACES - 2u);
  let here = at + 2u + 2u * first;
  let low = vec2f(numbers[here], numbers[here + 1u]);
  let high = vec2f(numbers[here + 2u], numbers[here + 3u]);
  return mix(low, high, place - f32(first));
}

/** Halvings of the root, to the last digits of 32 bits. */
const FED_HALVINGS = 24u;

/** Numbers: highest pressure, share, the table. At the pressure that the wave from inside brings, see openSides.ts. */
fn reservoirPoint(inside: u32, at: u32, nx: f32, ny: f32) -> Point {
  let highest = numbers[at];
  let share = numbers[at + 1u];
  let stiff = value(V_density, inside) * soundSpeed(inside);
  let brought = value(V_pressure, inside) + stiff * (value(V_u, inside) * nx + value(V_v, inside) * ny);
  if (brought >= highest) { return Point(fedAt(at, 0.0).x, 0.0, 0.0, highest, share); }
  var low = 0.0;
  var high = sqrt(1.0 - LOWEST_SHARE);
  for (var n = 0u; n < FED_HALVINGS; n++) {
    let middle = (low + high) / 2.0;
    // The smaller the root, the higher the pressure, and the slower the gas.
    if (highest * (1.0 - middle * middle) - stiff * fedAt(at, middle).y < brought) { high = middle; } else { low = middle; }
  }
  let root = (low + high) / 2.0;
  let fed = fedAt(at, root);
  return Point(fed.x, -fed.y * nx, -fed.y * ny, highest * (1.0 - root * root), share);
}

/** Entries: kind, ghost, cell inside or source, next cell inside or the one that is mirrored, layer, place of its numbers. */
@compute @workgroup_size(64)
fn ghosts(@builtin(global_invocation_id) id: vec3u) {
  if (id.x >= flow.ghosts || over() || brokeBefore(stage)) { return; }
  let entry = flow.ghostsAt + 6u * id.x;
  let kind = lists[entry];
  let ghost = lists[entry + 1u];
  let inside = lists[entry + 2u];
  if (kind == G_copy) {
    copyCell(ghost, inside);
    return;
  }
  let next = lists[entry + 3u];
  let layer = lists[entry + 4u];
  let at = lists[entry + 5u];
  let nx = numbers[at];
  let ny = numbers[at + 1u];
  if (kind == G_mirror) {
    mirror(ghost, next, nx, ny);
    return;
  }
  if (kind == G_carried) {
    let density = carriedOn(V_density, inside, next, layer);
    let pressure = carriedOn(V_pressure, inside, next, layer);
    if (density > 0.0 && pressure > 0.0) {
      copyCell(ghost, inside);
      put(V_density, ghost, density);
      put(V_pressure, ghost, pressure);
      put(V_u, ghost, carriedOn(V_u, inside, next, layer));
      put(V_v, ghost, carriedOn(V_v, inside, next, layer));
    } else {
      mirror(ghost, select(next, inside, layer == 0u), nx, ny);
    }
    return;
  }
  var point = pointIn(inside);
  switch (kind) {
    case G_given: { point = airAt(at + 2u); }
    case G_far: { point = farPoint(inside, airAt(at + 2u), nx, ny); }
    case G_reservoir: { point = reservoirPoint(inside, u32(numbers[at + 2u]), nx, ny); }
    default: {
      if (point.u * nx + point.v * ny >= soundSpeed(inside)) {
        copyCell(ghost, inside);
        return;
      }
      point.pressure = numbers[at + 2u];
    }
  }
  if (!putPoint(ghost, point)) { atomicAdd(&status[S_broke + stage], 1u); atomicMin(&status[S_firstBroken], inside); }
}

/** d ln p / d ln ρ = ρ c²/p, by midpoints. */
fn slopeAt(share: f32, density: f32, pressure: f32) -> f32 {
  let tangent = mixedTangent(share, density, pressure);
  return ((tangent.x + 1.0) * pressure + tangent.z) / (tangent.x * pressure);
}

fn alongIsentrope(ahead: f32, pressure: f32, to: f32, share: f32) -> f32 {
  let step = log(to / ahead) / f32(ISENTROPE_STEPS);
  var rho = ahead;
  var p = pressure;
  for (var n = 0u; n < ISENTROPE_STEPS; n++) {
    let half = p * exp(slopeAt(share, rho, p) * step / 2.0);
    p *= exp(slopeAt(share, rho * exp(step / 2.0), half) * step);
    rho *= exp(step);
  }
  return p;
}

/** Entries: the cell ahead of a sharp corner, and one behind it. */
@compute @workgroup_size(64)
fn corners(@builtin(global_invocation_id) id: vec3u) {
  if (id.x >= flow.corners || over() || brokeBefore(2u) || told(S_broke + 2u) > 0u) { return; }
  let before = lists[flow.cornersAt + 2u * id.x];
  let cell = lists[flow.cornersAt + 2u * id.x + 1u];
  let ahead = pointIn(before);
  let own = pointIn(cell);
  if (!(own.density < ahead.density) || abs(own.share - ahead.share) > ALIKE) { return; }
  let p = alongIsentrope(ahead.density, ahead.pressure, own.density, own.share);
  let tangent = mixedTangent(own.share, own.density, p);
  let enthalpy = ((value(V_kappa, before) + 1.0) * ahead.pressure + value(V_zeta, before)) / ahead.density + value(V_eta, before);
  let whole = enthalpy + (ahead.u * ahead.u + ahead.v * ahead.v) / 2.0;
  let square = 2.0 * (whole - ((tangent.x + 1.0) * p + tangent.z) / own.density - tangent.y);
  let speed = length(vec2f(own.u, own.v));
  if (!(square > 0.0) || !(speed > 0.0) || !isAboveNothing(p)) { return; }
  let factor = sqrt(square) / speed;
  _ = putPoint(cell, Point(own.density, own.u * factor, own.v * factor, p, own.share));
}
`;
