import { hostFunction } from '../../src/worksheet/callFunction';
import { opening } from '../../src/worksheet/functions/opening';
import { HostError } from '../support/callInCells';

// The console stands in for the developer's: what is written to it is the only place where a fault keeps its stack.
test('a fault that nobody foresaw is an error in the cell, and keeps its stack for the console', () => {
  const told = jest.spyOn(console, 'error').mockImplementation(() => undefined);
  const fault = new Error('unforeseen');
  const broken = {
    ...opening,
    compute: () => {
      throw fault;
    },
  };
  const call = hostFunction(broken, (code, message) => new HostError(code, message));
  expect(() => call([[762]], [[1981]], [[1830]], [[930]], [[25]])).toThrow(
    expect.objectContaining({ message: expect.stringContaining('fault of the add-in') as string }),
  );
  expect(told).toHaveBeenCalledWith('CARRY.OPENING failed:', fault);
  told.mockRestore();
});
