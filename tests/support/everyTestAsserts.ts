// A test that has run through without expecting anything has tested nothing: a loop over nothing, a branch never taken.
beforeEach(() => expect.hasAssertions());
