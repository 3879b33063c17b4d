import { readdirSync, statSync } from 'node:fs';
import path from 'node:path';

/** Every file of a folder and of those in it. */
export function filesIn(folder: string): string[] {
  return readdirSync(folder).flatMap((name) => {
    const file = path.join(folder, name);
    return statSync(file).isDirectory() ? filesIn(file) : [file];
  });
}

/** The sources among them. */
export const sourcesIn = (folder: string): string[] => filesIn(folder).filter((file) => file.endsWith('.ts'));
