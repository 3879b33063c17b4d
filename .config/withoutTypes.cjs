const { transform } = require('esbuild');

/** How types are taken off: `tsc` checks them. Fields are set as the compiler sets them for this target. */
const WITHOUT_TYPES = {
  loader: 'ts',
  target: 'es2020',
  tsconfigRaw: { compilerOptions: { useDefineForClassFields: false } },
};

/** A loader of webpack that takes the types off. */
module.exports = function withoutTypes(source) {
  const done = this.async();
  transform(source, {
    ...WITHOUT_TYPES,
    sourcefile: this.resourcePath,
    sourcemap: this.sourceMap && 'external',
  }).then(({ code, map }) => done(null, code, map || undefined), done);
};
module.exports.WITHOUT_TYPES = WITHOUT_TYPES;
