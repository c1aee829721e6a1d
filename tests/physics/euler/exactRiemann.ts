/** Exact solution of two states of a perfect gas side by side: Toro, Riemann Solvers and Numerical Methods, ch. 4. */

export interface RiemannState {
  readonly density: number;
  readonly velocity: number;
  readonly pressure: number;
}

export interface RiemannSolution {
  readonly pressure: number;
  readonly velocity: number;
  /** At x/t. */ at(speed: number): RiemannState;
}

export function exactRiemann(left: RiemannState, right: RiemannState, gamma: number): RiemannSolution {
  const sound = ({ density, pressure }: RiemannState) => Math.sqrt((gamma * pressure) / density);
  const change = (p: number, state: RiemannState): readonly [number, number] => {
    const { density, pressure } = state;
    if (p > pressure) {
      const a = 2 / ((gamma + 1) * density);
      const b = ((gamma - 1) / (gamma + 1)) * pressure;
      const root = Math.sqrt(a / (p + b));
      return [(p - pressure) * root, root * (1 - (p - pressure) / (2 * (p + b)))];
    }
    const c = sound(state);
    const ratio = p / pressure;
    return [
      ((2 * c) / (gamma - 1)) * (ratio ** ((gamma - 1) / (2 * gamma)) - 1),
      ratio ** (-(gamma + 1) / (2 * gamma)) / (density * c),
    ];
  };
  let p = Math.max(1e-8, (left.pressure + right.pressure) / 2);
  for (let n = 0; n < 200; n++) {
    const [fl, dl] = change(p, left);
    const [fr, dr] = change(p, right);
    const next = Math.max(1e-12, p - (fl + fr + right.velocity - left.velocity) / (dl + dr));
    const near = Math.abs(next - p) < 1e-14 * (next + p);
    p = next;
    if (near) break;
  }
  const u = (left.velocity + right.velocity + change(p, right)[0] - change(p, left)[0]) / 2;
  /** A wave that runs to the left; mirrored for the right. */
  const half = (state: RiemannState, sign: 1 | -1, speed: number): RiemannState => {
    const v = sign * state.velocity;
    const s = sign * speed;
    const c = sound(state);
    const star = sign * u;
    const back = (density: number, velocity: number, pressure: number): RiemannState => ({
      density,
      velocity: sign * velocity,
      pressure,
    });
    const g = (gamma - 1) / (gamma + 1);
    if (p > state.pressure) {
      const ratio = p / state.pressure;
      const shock = v - c * Math.sqrt(((gamma + 1) / (2 * gamma)) * ratio + (gamma - 1) / (2 * gamma));
      if (s <= shock) return state;
      return back((state.density * (ratio + g)) / (g * ratio + 1), star, p);
    }
    const inside = c * (p / state.pressure) ** ((gamma - 1) / (2 * gamma));
    if (s <= v - c) return state;
    if (s >= star - inside) return back(state.density * (p / state.pressure) ** (1 / gamma), star, p);
    const there = 2 / (gamma + 1) + (g / c) * (v - s);
    return back(
      state.density * there ** (2 / (gamma - 1)),
      (2 / (gamma + 1)) * (c + ((gamma - 1) / 2) * v + s),
      state.pressure * there ** ((2 * gamma) / (gamma - 1)),
    );
  };
  return {
    pressure: p,
    velocity: u,
    at: (speed) => (speed <= u ? half(left, 1, speed) : half(right, -1, speed)),
  };
}
