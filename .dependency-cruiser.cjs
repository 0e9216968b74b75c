/** The arrows of the house: they point one way. Patterns, so that new files are covered. */
const only = (name, from, allowed) => ({
  name,
  severity: 'error',
  comment: `${from} may point only at: ${allowed || 'nothing of ours'}`,
  from: { path: from },
  to: {
    path: '^(apps|packages|tests|prisma)/',
    pathNot: `^(${allowed ? allowed + '|' : ''}${from.slice(1)})`,
  },
});
module.exports = {
  forbidden: [
    { name: 'no-circle', severity: 'error', from: {}, to: { circular: true } },
    { name: 'no-unresolved', severity: 'error', from: {}, to: { couldNotResolve: true } },
    {
      name: 'nothing-points-at-an-app',
      severity: 'error',
      from: { path: '^packages/' },
      to: { path: '^apps/' },
    },
    only('tuning-math-stands-alone', '^packages/tuning-math/', ''),
    only('pictures-stand-alone', '^packages/pictures/', ''),
    only('contracts-stand-alone', '^packages/contracts/', ''),
    only('database-stands-alone', '^packages/database/', ''),
    only('practice-car-on-tuning-math', '^packages/practice-car/', 'packages/tuning-math/'),
    only('next-pull-on-math', '^packages/next-pull/', 'packages/contracts/|packages/tuning-math/'),
    only(
      'web-on-contracts',
      '^apps/web/',
      'packages/contracts/|packages/next-pull/|packages/pictures/|packages/practice-car/|packages/tuning-math/',
    ),
    {
      name: 'practice-car-only-in-its-worker',
      severity: 'error',
      comment: 'The simulation weighs as much as a screen: pages take its types, the worker alone runs it.',
      from: { path: '^apps/web/', pathNot: '^apps/web/practice/worker/' },
      to: { path: '^packages/practice-car/', dependencyTypesNot: ['type-only'] },
    },
    {
      name: 'api-not-on-web',
      severity: 'error',
      from: { path: '^apps/api/' },
      to: { path: '^apps/(web|start)/' },
    },
    {
      name: 'routes-leave-the-database-to-services',
      severity: 'error',
      from: { path: '^apps/api/src/.*routes[.]ts$' },
      to: { path: '^packages/database/' },
    },
    {
      name: 'packages-have-one-door',
      severity: 'error',
      from: { path: '^(apps|packages|tests)/([^/]+)/' },
      to: {
        path: '^packages/([^/]+)/src/',
        pathNot: '^packages/($2/|[^/]+/src/index[.]ts$)',
      },
    },
    {
      name: 'no-catch-all-names',
      severity: 'error',
      from: {},
      to: { path: '/(utils|helpers|common|misc)([.]tsx?$|/)', pathNot: 'node_modules' },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '(^|/)(dist|[.]next|generated|node_modules)/|next-env[.]d[.]ts$' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.base.json' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['pullbook-source', 'import', 'node', 'default', 'types'],
      extensions: ['.ts', '.tsx', '.js', '.mjs', '.cjs', '.json'],
    },
  },
};
