/**
 * Commands of the host's maker that only who has Excel needs. They are fetched when they are called for: with all
 * that comes with the first, an installation would be three times as large.
 */
const VERSIONS = { 'office-addin-debugging': '7.0.0', 'office-addin-manifest': '3.0.0' } as const;

export interface PlatformTool {
  readonly command: string;
  readonly words: readonly string[];
  /** On Windows npm is a batch file, which only a shell runs. */
  readonly shell: boolean;
}

/** How a tool is called, in its pinned version. */
export function platformTool(
  name: keyof typeof VERSIONS,
  words: readonly string[],
  platform: NodeJS.Platform = process.platform,
): PlatformTool {
  const shell = platform === 'win32';
  const given = shell ? words.map((word) => `"${word}"`) : words;
  return {
    command: 'npm',
    // Of what they bring it was not tried whether it does without the scripts that .npmrc forbids.
    words: [
      'exec',
      '--yes',
      '--ignore-scripts=false',
      `--package=${name}@${VERSIONS[name]}`,
      '--',
      name,
      ...given,
    ],
    shell,
  };
}
