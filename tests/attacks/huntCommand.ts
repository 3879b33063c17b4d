import { emptyReport, huntRoute, huntShut, huntStage } from './hunt';

// npm run hunt -- --seconds 600 --seed 7 (or --routes 2000 --stages 10000 --shut 2000)
const option = (name: string): number | undefined => {
  const at = process.argv.indexOf(`--${name}`);
  if (at < 0) return undefined;
  const value = Number(process.argv[at + 1]);
  if (!Number.isFinite(value) || value < 0) {
    throw new Error(`--${name} is ${process.argv[at + 1]}: allowed is a number from 0 on`);
  }
  return value;
};

/** Moves that a search tries in the campaign: ten times what the tests' share does. */
const TRIES = 4000;

function main(): void {
  const first = option('seed') ?? 7;
  const counted = [option('stages'), option('routes'), option('shut')];
  const byTime = counted.every((count) => count === undefined);
  const [stages = 0, routes = 0, shut = 0] = byTime ? [Infinity, Infinity, Infinity] : counted;
  const end = performance.now() + (option('seconds') ?? (byTime ? 60 : Infinity)) * 1000;
  const begun = performance.now();
  const report = emptyReport();
  const hunts = [
    [stages, (seed: number) => huntStage(seed, report)],
    [routes, (seed: number) => huntRoute(seed, report)],
    [shut, (seed: number) => huntShut(seed, TRIES, report)],
  ] as const;
  let told = 0;
  for (let n = 0; performance.now() < end && hunts.some(([count]) => n < count); n++) {
    for (const [count, hunt] of hunts) if (n < count && performance.now() < end) hunt(first + n);
    for (const { seed, what } of report.findings.slice(told)) console.log(`seed ${seed}: ${what}`);
    told = report.findings.length;
  }
  const { findings, ...figures } = report;
  console.log({ ...figures, seconds: Math.round((performance.now() - begun) / 1000), seed: first });
  console.log(`${findings.length} findings`);
  if (findings.length > 0) process.exitCode = 1;
}

main();
