import { collectWorking } from '../../../src/core/measures/working';
import { playRoom } from '../../../src/core/room/playRoom';
import { roomSpare } from '../../../src/core/room/roomSpare';

const INCH = 25.4;

describe('playRoom', () => {
  it('is 216 x 166 in for a 58 in cue round a 9 ft table of 100 x 50 in (common practice; playing area: WPA)', () => {
    const room = playRoom({ playLength: 100 * INCH, playWidth: 50 * INCH, cue: 58 * INCH, backswing: 0 });
    expect(room.length / INCH).toBeCloseTo(216, 9);
    expect(room.width / INCH).toBeCloseTo(166, 9);
  });

  it('is 208 x 162 in for the 8 ft table of 92 x 46 in (playing area: WPA; rule: common practice)', () => {
    const room = playRoom({ playLength: 92 * INCH, playWidth: 46 * INCH, cue: 58 * INCH, backswing: 0 });
    expect([room.length / INCH, room.width / INCH].map((x) => Math.round(x * 1e6) / 1e6)).toEqual([208, 162]);
  });

  it('adds cue and backswing to the 3569 x 1778 mm of snooker (playing area: WPBSA rules 1.1)', () => {
    expect(playRoom({ playLength: 3569, playWidth: 1778, cue: 1450, backswing: 150 })).toEqual({
      length: 3569 + 3200,
      width: 1778 + 3200,
    });
  });
});

describe('roomSpare', () => {
  const TABLE = { playLength: 2540, playWidth: 1270, cue: 1473.2, backswing: 0 };

  it('is the smaller spare with the table the better way round (5486.4 x 4216.4 needed)', () => {
    expect(roomSpare({ roomLength: 6000, roomWidth: 4500, ...TABLE })).toBeCloseTo(283.6, 9);
    expect(roomSpare({ roomLength: 4500, roomWidth: 6000, ...TABLE })).toBeCloseTo(283.6, 9);
    expect(roomSpare({ roomLength: 5500, roomWidth: 5500, ...TABLE })).toBeCloseTo(13.6, 9);
  });

  it('is negative when short', () => {
    expect(roomSpare({ roomLength: 5000, roomWidth: 4500, ...TABLE })).toBeCloseTo(-486.4, 9);
  });

  it('is 0 in exactly the room to play', () => {
    const { length, width } = playRoom(TABLE);
    expect(roomSpare({ roomLength: length, roomWidth: width, ...TABLE })).toBe(0);
  });

  it('writes a working that ends in the result', () => {
    const { result, steps } = collectWorking((w) =>
      roomSpare({ roomLength: 6000, roomWidth: 4500, ...TABLE }, w),
    );
    expect(steps.at(-1)!.value).toBe(result);
  });
});
