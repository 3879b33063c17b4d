/**
 * What a measure is of, where that differs from stage to stage: each stage says it with its measure (`MeasureOf`), and a
 * customer is asked in the words for it (`customer/measureQuestion`). A measure that is not here is of one thing wherever
 * it is taken.
 */
export interface MeasuredOf {
  readonly width:
    'door opening' | 'lift doors' | 'room' | 'stair' | 'way before the turn' | 'way between walls';
  readonly widthOut: 'lift car' | 'passage beyond the door' | 'way after the turn';
  readonly height: 'door opening' | 'over the nosings' | 'floor to ceiling';
  readonly ceiling: 'lift car' | 'passage beyond the door' | 'floor of the place';
  readonly depth: 'lift car' | 'dead end' | 'landing';
  readonly length: 'room' | 'end to end';
  readonly rise: 'one step' | 'whole ramp';
}
