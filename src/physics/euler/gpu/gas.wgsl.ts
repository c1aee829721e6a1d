/** The gases of a field for the shaders: see fieldGas.ts and evenTable.ts of the reference. */

export const GAS = /* wgsl */ `
/** Weights of the four values round a place and of their slope; beyond the ends straight on. */
struct Weights { first: u32, value: vec4f, slope: vec4f }

fn weightsAt(place: f32, count: u32) -> Weights {
  let first = u32(clamp(floor(place), 0.0, f32(count - 2u)));
  let whole = place - f32(first);
  let t = clamp(whole, 0.0, 1.0);
  let t2 = t * t;
  let t3 = t2 * t;
  let slope = vec4f(-1.0 + 4.0 * t - 3.0 * t2, -10.0 * t + 9.0 * t2, 1.0 + 8.0 * t - 9.0 * t2, -2.0 * t + 3.0 * t2) / 2.0;
  let own = vec4f(-t + 2.0 * t2 - t3, 2.0 - 5.0 * t2 + 3.0 * t3, t + 4.0 * t2 - 3.0 * t3, -t2 + t3) / 2.0;
  return Weights(first, own + (whole - t) * slope, slope);
}

/** κ, η, ζ of one gas: 0 and its κ, or 1, rows, columns, from and places a unit of both axes, values. */
fn tangentOf(gas: u32, density: f32, pressure: f32) -> vec3f {
  if (numbers[gas] == 0.0) { return vec3f(numbers[gas + 1u], 0.0, 0.0); }
  let columns = u32(numbers[gas + 2u]);
  let theta = pressure / density;
  let perX = numbers[gas + 4u];
  let perY = numbers[gas + 6u];
  let x = weightsAt((log(pressure) - numbers[gas + 3u]) * perX, u32(numbers[gas + 1u]));
  let y = weightsAt((log(theta) - numbers[gas + 5u]) * perY, columns);
  var value = 0.0;
  var slopeX = 0.0;
  var slopeY = 0.0;
  for (var a = 0u; a < 4u; a++) {
    let row = gas + 7u + (x.first + a) * (columns + 2u) + y.first;
    let values = vec4f(numbers[row], numbers[row + 1u], numbers[row + 2u], numbers[row + 3u]);
    let across = dot(y.value, values);
    value += x.value[a] * across;
    slopeX += x.slope[a] * across;
    slopeY += x.value[a] * dot(y.slope, values);
  }
  slopeX *= perX;
  slopeY *= perY;
  return vec3f((slopeX + slopeY) / theta, value - slopeY, -density * slopeX);
}

fn isAlone(share: f32) -> bool {
  return flow.inner == flow.outer || share < MIXED || share > 1.0 - MIXED;
}

fn mixedTangent(share: f32, density: f32, pressure: f32) -> vec3f {
  if (share > 1.0 - MIXED) { return tangentOf(flow.inner, density, pressure); }
  let outer = tangentOf(flow.outer, density, pressure);
  if (share < MIXED) { return outer; }
  return share * tangentOf(flow.inner, density, pressure) + (1.0 - share) * outer;
}

fn putTangent(cell: u32, tangent: vec3f) {
  put(V_kappa, cell, tangent.x);
  put(V_eta, cell, tangent.y);
  put(V_zeta, cell, tangent.z);
}

struct Point { density: f32, u: f32, v: f32, pressure: f32, share: f32 }

fn pointIn(cell: u32) -> Point {
  return Point(value(V_density, cell), value(V_u, cell), value(V_v, cell), value(V_pressure, cell), value(V_share, cell));
}

/** False where it is no state of a gas. */
fn putPoint(cell: u32, point: Point) -> bool {
  if (!isAboveNothing(point.density) || !isAboveNothing(point.pressure)) { return false; }
  let tangent = mixedTangent(point.share, point.density, point.pressure);
  put(V_density, cell, point.density);
  put(V_u, cell, point.u);
  put(V_v, cell, point.v);
  put(V_pressure, cell, point.pressure);
  put(V_share, cell, point.share);
  putTangent(cell, tangent);
  put(V_energy, cell, tangent.x * point.pressure + tangent.y * point.density + tangent.z
    + point.density * (point.u * point.u + point.v * point.v) / 2.0);
  return true;
}

fn soundSpeed(cell: u32) -> f32 {
  let kappa = value(V_kappa, cell);
  return sqrt(((kappa + 1.0) * value(V_pressure, cell) + value(V_zeta, cell)) / (kappa * value(V_density, cell)));
}

/** New tangents: see settle of the reference. */
@compute @workgroup_size(64)
fn settle(@builtin(global_invocation_id) id: vec3u) {
  if (id.x >= flow.cells || over() || brokeBefore(2u)) { return; }
  let cell = lists[flow.cellsAt + 2u * id.x];
  let every = flow.own == 0u || told(S_steps) % RENEWED == 0u || told(S_tries) > 0u;
  let density = value(V_density, cell);
  let share = value(V_share, cell);
  let alone = isAlone(share);
  if (alone && !every) { return; }
  let moving = density * (value(V_u, cell) * value(V_u, cell) + value(V_v, cell) * value(V_v, cell)) / 2.0;
  var pressure = value(V_pressure, cell);
  var tangent = mixedTangent(share, density, pressure);
  if (alone) {
    for (var n = 0u; n < PRESSURE_STEPS; n++) {
      let next = (value(V_energy, cell) - moving - tangent.y * density - tangent.z) / tangent.x;
      let near = abs(next - pressure) <= NEAR * pressure;
      pressure = next;
      if (!isAboveNothing(pressure)) {
        broke(2u, cell, lists[flow.cellsAt + 2u * id.x + 1u]);
        return;
      }
      if (near) { break; }
      tangent = mixedTangent(share, density, pressure);
    }
    put(V_pressure, cell, pressure);
  } else {
    put(V_energy, cell, tangent.x * pressure + tangent.y * density + tangent.z + moving);
  }
  putTangent(cell, tangent);
}
`;
