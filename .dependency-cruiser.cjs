/** The layers in the order data flows; each may import only itself and those before it. */
const layers = ['numerics', 'physics', 'study', 'answer', 'telling', 'faces'];
const rules = layers.map((layer, i) => ({
  name: `${layer}-knows-only-earlier-layers`,
  comment: `src/${layer} may import only ${layers.slice(0, i + 1).join(', ')}`,
  severity: 'error',
  from: { path: `^src/${layer}/` },
  to: { path: `^src/(${layers.slice(i + 1).join('|') || 'nothing'})/` },
}));
module.exports = {
  forbidden: [
    ...rules,
    {
      name: 'no-circles',
      severity: 'error',
      from: {},
      to: { circular: true },
    },
    {
      name: 'inner-layers-touch-no-machine',
      comment: 'numerics, physics, study, answer and telling run unchanged in a browser worker: no Node built-ins',
      severity: 'error',
      from: { path: '^src/(numerics|physics|study|answer|telling)/' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'workbench-touches-no-server',
      severity: 'error',
      from: { path: '^src/faces/workbench/' },
      to: { path: '^src/faces/(server|cli|disk|package)/' },
    },
    {
      name: 'physics-needs-no-library',
      comment: 'the physics is importable alone',
      severity: 'error',
      from: { path: '^src/(numerics|physics)/' },
      to: { dependencyTypes: ['npm', 'npm-dev', 'npm-optional'] },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsConfig: { fileName: 'tsconfig.json' },
    tsPreCompilationDeps: true,
  },
};
