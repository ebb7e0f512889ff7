/** Commands that run studies of a small line. */

/**
 * The words of each command, of a scenario `line.yaml`.
 *
 * @param replications  that each is to run
 */
export const studyWords = (replications: number): readonly (readonly string[])[] => {
  const few = ['--replications', String(replications)]
  return [
    ['run', 'line.yaml'],
    ['run', 'line.yaml', ...few],
    ['sweep', 'line.yaml', '--carriers', '3..4', ...few],
    ['carriers', 'line.yaml', '--carriers', '3..4', '--at-most', '20'],
    ['forecast', 'line.yaml', ...few],
    ['compare', 'line.yaml', '--set', 'fast: drive.speed=20 m/min', ...few],
    ['grid', 'line.yaml', '--carriers', '3..4', '--set', 'drive.speed=10,15 m/min', ...few],
    ['drivers', 'line.yaml', ...few],
    ['losses', 'line.yaml', ...few],
    ['order', 'line.yaml', '--move', 'B', '--zones', 'Z04,Z05', '--check-replications', String(replications)],
    ['steady', 'line.yaml', '--runs', String(replications)],
  ]
}
