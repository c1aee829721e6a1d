/** Steps and stages for the shaders: see stage.ts, timeSteps.ts and advance.ts of the reference. */

export const STAGE = /* wgsl */ `
/** Through two faces together. */
fn swept(cell: u32, back: u32, axes: u32, sound: f32) -> f32 {
  let one = cell - back;
  let x = metric(axes, one) * metric(axes + 2u, one) + metric(axes, cell) * metric(axes + 2u, cell);
  let y = metric(axes + 1u, one) * metric(axes + 2u, one) + metric(axes + 1u, cell) * metric(axes + 2u, cell);
  return abs(value(V_u, cell) * x + value(V_v, cell) * y) + sound * sqrt(x * x + y * y);
}

/** Each cell’s own longest step; the shortest of all. */
fn sweepTime(cell: u32, stride: u32) -> f32 {
  let sound = soundSpeed(cell);
  return 2.0 * metric(0u, cell) / (swept(cell, 1u, 2u, sound) + swept(cell, stride, 5u, sound));
}

@compute @workgroup_size(64)
fn steps(@builtin(global_invocation_id) id: vec3u) {
  if (id.x >= flow.cells || over()) { return; }
  let cell = lists[flow.cellsAt + 2u * id.x];
  let stride = lists[flow.cellsAt + 2u * id.x + 1u];
  var own = flow.courant * sweepTime(cell, stride);
  if (flow.spread > 0.0) { own = min(own, flow.spread * flow.courant * bitcast<f32>(told(S_shortest))); }
  field[secondsPlace(cell)] = select(flow.seconds, own, flow.own == 1u);
}

@compute @workgroup_size(64)
fn shortest(@builtin(global_invocation_id) id: vec3u) {
  if (id.x >= flow.cells) { return; }
  let cell = lists[flow.cellsAt + 2u * id.x];
  // Bits of numbers above 0 rise as they do.
  atomicMin(&status[S_shortest], bitcast<u32>(sweepTime(cell, lists[flow.cellsAt + 2u * id.x + 1u])));
}

/** What comes in through the four faces, less what goes out. */
fn gained(into: u32, out: u32, cell: u32, stride: u32) -> f32 {
  let second = 6u * flow.all;
  return flux[into * flow.all + cell - 1u] - flux[out * flow.all + cell]
    + (flux[second + into * flow.all + cell - stride] - flux[second + out * flow.all + cell]);
}

@compute @workgroup_size(64)
fn advance(@builtin(global_invocation_id) id: vec3u) {
  if (id.x >= flow.cells || over() || brokeBefore(stage)) { return; }
  let cell = lists[flow.cellsAt + 2u * id.x];
  let stride = lists[flow.cellsAt + 2u * id.x + 1u];
  let per = field[secondsPlace(cell)] / metric(0u, cell);
  let own = pointIn(cell);
  var mass = own.density + per * gained(0u, 0u, cell, stride);
  var x = own.density * own.u + per * gained(1u, 1u, cell, stride);
  // The pressure on the sides of a wedge round the axis pushes outward; flat blocks have no area there.
  var y = own.density * own.v + per * (gained(2u, 2u, cell, stride) + own.pressure * metric(1u, cell));
  // In comes what the cell behind a face reckons, out goes what the cell before it does.
  var held = value(V_energy, cell) + per * gained(4u, 3u, cell, stride);
  var inner = own.density * own.share + per * gained(5u, 5u, cell, stride);
  if (stage == 0u) {
    for (var kind = 0u; kind < 9u; kind++) { field[keptPlace(kind, cell)] = value(kind, cell); }
  } else {
    let was = field[keptPlace(V_density, cell)];
    mass = (mass + was) / 2.0;
    x = (x + was * field[keptPlace(V_u, cell)]) / 2.0;
    y = (y + was * field[keptPlace(V_v, cell)]) / 2.0;
    held = (held + field[keptPlace(V_energy, cell)]) / 2.0;
    inner = (inner + was * field[keptPlace(V_share, cell)]) / 2.0;
  }
  let within = held - (x * x + y * y) / (2.0 * mass);
  let pressure = (within - value(V_eta, cell) * mass - value(V_zeta, cell)) / value(V_kappa, cell);
  if (!isAboveNothing(mass) || !isAboveNothing(pressure)) {
    broke(stage, cell, stride);
    return;
  }
  put(V_density, cell, mass);
  put(V_u, cell, x / mass);
  put(V_v, cell, y / mass);
  put(V_share, cell, inner / mass);
  put(V_energy, cell, held);
  put(V_pressure, cell, pressure);
}

/** Back to where the step began where it broke; else one step less without slopes. */
@compute @workgroup_size(64)
fn finish(@builtin(global_invocation_id) id: vec3u) {
  if (over()) { return; }
  if (brokeBefore(2u) || told(S_broke + 2u) > 0u) {
    if (id.x >= flow.cells) { return; }
    let cell = lists[flow.cellsAt + 2u * id.x];
    for (var kind = 0u; kind < 9u; kind++) { put(kind, cell, field[keptPlace(kind, cell)]); }
  } else if (id.x < flow.all && told(S_someBlurred) > 0u) {
    let blurred = atomicLoad(&marks[flow.all + id.x]);
    if (blurred > 0u) { atomicStore(&marks[flow.all + id.x], blurred - 1u); }
  }
}

@compute @workgroup_size(1)
fn count() {
  if (over()) { return; }
  if (brokeBefore(2u) || told(S_broke + 2u) > 0u) {
    atomicStore(&status[S_someBlurred], BLURRED_STEPS);
    if (withoutSlopes()) {
      atomicStore(&status[S_failed], 1u);
      return;
    }
    atomicAdd(&status[S_tries], 1u);
  } else {
    if (told(S_tries) > 0u) { atomicAdd(&status[S_rescued], 1u); }
    if (told(S_someBlurred) > 0u) { atomicSub(&status[S_someBlurred], 1u); }
    atomicStore(&status[S_tries], 0u);
    atomicAdd(&status[S_steps], 1u);
    atomicSub(&status[S_left], 1u);
  }
  for (var phase = 0u; phase < 3u; phase++) { atomicStore(&status[S_broke + phase], 0u); }
  atomicStore(&status[S_firstBroken], 0xffffffffu);
  atomicStore(&status[S_shortest], 0x7f800000u);
}
`;
