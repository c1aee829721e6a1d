/** Short names and symbols of the trade, for the quantity that is meant. */

const names: Readonly<Record<string, string>> = {
  isp: 'specificImpulse',
  ve: 'specificImpulse',
  impulse: 'specificImpulse',
  f: 'thrust',
  push: 'thrust',
  cf: 'thrustCoefficient',
  mdot: 'massFlow',
  flow: 'massFlow',
  flowrate: 'massFlow',
  massflowrate: 'massFlow',
  pc: 'chamberPressure',
  p0: 'chamberPressure',
  tc: 'chamberTemperature',
  of: 'mixtureRatio',
  mr: 'mixtureRatio',
  eps: 'areaRatio',
  epsilon: 'areaRatio',
  expansionratio: 'areaRatio',
  cstar: 'characteristicVelocity',
  dt: 'throatDiameter',
  at: 'throatArea',
  de: 'exitDiameter',
  ae: 'exitArea',
  pe: 'exitPressure',
  me: 'exitMach',
};

/** The plain name of the quantity that a short name or symbol stands for; null where it is none. */
export function tradeNameOf(text: string): string | null {
  const plain = text
    .toLowerCase()
    .replace(/ṁ/g, 'mdot')
    .replace(/ε/g, 'eps')
    .replace(/\*/g, 'star')
    .replace(/[^a-z0-9]/g, '');
  return Object.hasOwn(names, plain) ? names[plain]! : null;
}
