const fs = require('node:fs');
const path = require('node:path');
const { CycloneDxWebpackPlugin } = require('@cyclonedx/webpack-plugin');
const { transformSync } = require('esbuild');
const MinimizerPlugin = require('minimizer-webpack-plugin');
const { parseNumber } = require('office-addin-cli');
const { Compilation, sources } = require('webpack');

const OFFICE_JS_CDN = 'https://appsforoffice.microsoft.com/lib/1/hosted/office.js';
const LOCAL_PORT = 3000;

/** Loads a module of ours at build time; types are only taken off, `tsc` checks them. */
function loadSource(file) {
  const previous = require.extensions['.ts'];
  require.extensions['.ts'] = (module, name) => {
    const { code } = transformSync(fs.readFileSync(name, 'utf8'), { loader: 'ts', format: 'cjs' });
    module._compile(code, name);
  };
  try {
    for (const key of Object.keys(require.cache)) {
      if (key.startsWith(path.resolve(__dirname, 'src'))) delete require.cache[key];
    }
    return require(path.resolve(__dirname, file));
  } finally {
    if (previous) require.extensions['.ts'] = previous;
    else delete require.extensions['.ts'];
  }
}

/** What is generated or copied beside the scripts: metadata, manifest, pages, icons, the local office.js. */
class AddInFiles {
  constructor({ baseUrl, local }) {
    this.baseUrl = baseUrl;
    this.local = local;
  }

  apply(compiler) {
    compiler.hooks.thisCompilation.tap('AddInFiles', (compilation) => {
      compilation.hooks.processAssets.tap(
        { name: 'AddInFiles', stage: Compilation.PROCESS_ASSETS_STAGE_ADDITIONAL },
        () => {
          const emit = (name, content) =>
            compilation.emitAsset(name, new sources.RawSource(content), { minimized: true });
          const { FUNCTIONS } = loadSource('src/worksheet/functions/index.ts');
          const { functionsJson, functionsJsonText } = loadSource('src/worksheet/functionsJson.ts');
          const { functionsJsonFaults } = loadSource('src/worksheet/functionsJsonRules.ts');
          for (const fault of functionsJsonFaults(functionsJson(FUNCTIONS).functions)) {
            compilation.errors.push(new Error(`functions.json: ${fault}`));
          }
          emit('functions.json', functionsJsonText(FUNCTIONS));

          const read = (file) => fs.readFileSync(path.resolve(__dirname, file), 'utf8');
          emit(
            'manifest.xml',
            read('manifest.xml').replaceAll(`https://localhost:${LOCAL_PORT}`, this.baseUrl),
          );
          const officeJs = this.local ? 'office/office.js' : OFFICE_JS_CDN;
          const officeOrigin = this.local ? '' : ` ${new URL(OFFICE_JS_CDN).origin}`;
          const page = read('src/taskpane/taskpane.html');
          emit(
            'taskpane.html',
            page
              .replaceAll('{{officeJs}}', officeJs)
              .replaceAll('{{officeOrigin}}', officeOrigin)
              // In a browser office.js frames a page of its own where it does not know who holds the workbook.
              .replaceAll('{{officeFrame}}', officeOrigin.trim() || "'self'"),
          );
          for (const name of ['taskpane.css', 'support.html', 'oldEngine.js'])
            emit(name, read(`src/taskpane/${name}`));
          if (this.local) {
            for (const name of ['sheetPage.html', 'sheetPage.css'])
              emit(name, read(`src/sheetHost/page/${name}`));
            // Most of the sheet page is the workbook library, which takes longer to minify than all the rest, and
            // the page is read on this machine only.
            compilation.updateAsset('sheetPage.js', (source) => source, { minimized: true });
          }

          const { ICON_SIZES, iconPng } = loadSource('src/taskpane/icon.ts');
          for (const size of ICON_SIZES) emit(`icon-${size}.png`, iconPng(size));

          if (this.local) this.copyOfficeJs(emit);
        },
      );
    });
  }

  // office.js loads its host files from its own folder; only what Excel and a plain browser page ask for.
  copyOfficeJs(emit) {
    const folder = path.join(path.dirname(require.resolve('@microsoft/office-js/package.json')), 'dist');
    const wanted =
      /^(office|excel-(web|win32|mac|ios|android|winrt)-[\d.]+(-core)?|o15apptofilemappingtable|es6-promise|custom-functions-runtime)\.js$/;
    const pick = fs.readdirSync(folder).filter((name) => wanted.test(name));
    for (const name of pick) emit(`office/${name}`, fs.readFileSync(path.join(folder, name)));
    const strings = path.join(folder, 'en-us');
    for (const name of fs.readdirSync(strings).filter((n) => /office_strings\.js$/.test(n))) {
      emit(`office/en-us/${name}`, fs.readFileSync(path.join(strings, name)));
    }
  }
}

/** The try-out page, for this computer only: a deployed build has none of it, and not the workbook library either. */
const TRY_OUT_PAGE = {
  sheetPage: './src/sheetHost/page/sheetPage.ts',
};

/** Writes licences.txt: each package that is in the scripts or beside them, with its licence and notices. */
class LicenceNotices {
  constructor({ local }) {
    this.local = local;
  }

  apply(compiler) {
    compiler.hooks.thisCompilation.tap('LicenceNotices', (compilation) => {
      compilation.hooks.processAssets.tap(
        { name: 'LicenceNotices', stage: Compilation.PROCESS_ASSETS_STAGE_REPORT },
        () => {
          const folders = new Set(
            this.local ? [path.dirname(require.resolve('@microsoft/office-js/package.json'))] : [],
          );
          const look = (module) => {
            for (const part of module.modules ?? []) look(part);
            const found = /^.*[\\/]node_modules[\\/](?:@[^\\/]+[\\/])?[^\\/]+/.exec(module.resource ?? '');
            if (found) folders.add(found[0]);
          };
          for (const module of compilation.modules) look(module);
          const text =
            folders.size === 0
              ? NOTHING
              : [...folders]
                  .map(noticeOf)
                  .sort()
                  .join(`\n${'-'.repeat(80)}\n\n`);
          compilation.emitAsset('licences.txt', new sources.RawSource(text));
        },
      );
    });
  }
}

const NOTHING = 'Nothing of other people is in these scripts.\n';

/** The notice of a package: name, version, and what its own files say of licences. */
function noticeOf(folder) {
  const { name, version, license } = JSON.parse(fs.readFileSync(path.join(folder, 'package.json'), 'utf8'));
  const files = fs
    .readdirSync(folder)
    .filter((file) => /^(licen[cs]e|notice|third.party.notices)/i.test(file));
  const texts = files.map((file) => fs.readFileSync(path.join(folder, file), 'utf8').trim());
  if (texts.length === 0)
    throw new Error(`${name} brings no text of its licence (${license}): its notice has to be found`);
  return `${name} ${version}\n\n${texts.join('\n\n')}\n`;
}

/** Beside the scripts, what of other people is in them: licences.txt, and bom.json, a bill of materials (CycloneDX). */
const noticesOf = (local) => [
  new LicenceNotices({ local }),
  new CycloneDxWebpackPlugin({
    specVersion: '1.6',
    outputLocation: '.',
    includeWellknown: false,
    reproducibleResults: true,
    rootComponentType: 'application',
  }),
];

/** Where the add-in is served from: Excel takes nothing that is not https. */
function servedFrom({ baseUrl, port }) {
  if (baseUrl === undefined)
    return `https://localhost:${port === undefined ? LOCAL_PORT : parseNumber(port, 'port must be a number')}`;
  const text = String(baseUrl);
  if (!/^https:\/\/[^\s/?#@"<>&]+(\/[^\s?#"<>&]*)?$/.test(text))
    throw new Error(
      `baseUrl is "${text}": allowed is an https address without a query, as https://your.server/carry`,
    );
  return text.replace(/\/+$/, '');
}

module.exports = (env = {}, argv = {}) => {
  const baseUrl = servedFrom(env);
  const local = env.baseUrl === undefined;
  return {
    mode: argv.mode ?? 'production',
    target: ['web', 'es2020'],
    devtool: argv.mode === 'development' ? 'source-map' : false,
    entry: {
      functions: './src/worksheet/register.ts',
      callWorker: './src/worksheet/calls/callWorker.ts',
      taskpane: './src/taskpane/taskpane.ts',
      ...(local ? TRY_OUT_PAGE : {}),
    },
    output: {
      path: path.resolve(__dirname, 'dist'),
      filename: '[name].js',
      clean: { keep: /^(?:sample-|reference\.md$|survey-form)/ },
    },
    resolve: { extensions: ['.ts', '.js'] },
    module: {
      rules: [
        {
          test: /\.ts$/,
          exclude: /node_modules/,
          use: {
            loader: 'ts-loader',
            options: { transpileOnly: true, compilerOptions: { noEmit: false, target: 'ES2020' } },
          },
        },
      ],
    },
    optimization: {
      minimizer: [new MinimizerPlugin({ minify: MinimizerPlugin.esbuildMinify, extractComments: false })],
    },
    performance: { hints: false },
    plugins: [new AddInFiles({ baseUrl, local }), ...noticesOf(local)],
  };
};
