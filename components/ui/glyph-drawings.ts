/**
 * Every sign, drawn once. Classes carry what many strokes share: gl a line, gf a fill, gb a filled head with its
 * outline, gk and gkf the knocked-out stripe, gc crisp on whole pixels.
 */

/** On a grid of 24, with lines of 1.75, for 16 px and more. */
export const GLYPHS = {
  // joint not fitted: an empty head
  open: '<path class="gl" d="M7 3.4H17L22 12L17 20.6H7L2 12Z"/>',
  // run up, not torqued: half filled
  snug: '<path class="gl" d="M7 3.4H17L22 12L17 20.6H7L2 12Z"/><path class="gf" d="M2 12H22L17 20.6H7Z"/>',
  // at final torque: full, one stripe that runs on to the part
  final:
    '<path class="gb" d="M7 3.4H17L22 12L17 20.6H7L2 12Z"/><path class="gk" stroke-width="3" d="M12 4.4V19.6"/><path class="gl" stroke-width="3" d="M12 0.3V3M12 21V23.7"/>',
  // seen by a second person: full, two stripes
  verified:
    '<path class="gb" d="M7 3.4H17L22 12L17 20.6H7L2 12Z"/><path class="gk" stroke-width="2.2" d="M9.2 4.4V19.6M14.8 4.4V19.6"/><path class="gl" stroke-width="2.2" d="M9.2 0.3V3M9.2 21V23.7M14.8 0.3V3M14.8 21V23.7"/>',
  // moved since: full, the stripe is broken
  disturbed:
    '<path class="gb" d="M7 3.4H17L22 12L17 20.6H7L2 12Z"/><path class="gk" stroke-width="2.8" d="M8.4 4.4V12.6M15.6 11.4V19.6"/><path class="gl" stroke-width="2.8" d="M12 0.3V3M12 21V23.7"/>',
  // a temporary fixing stands in: a cable tie
  stopgap:
    '<path class="gl" d="M12.5 17.5H9.5a6.5 6.5 0 1 1 6.5-6.5V13"/><path class="gf" d="M12.4 13h7.2v5.4h-7.2z"/><path class="gl" d="M16 18.4V23"/>',
  // not made yet: an empty box
  due: '<path class="gl" d="M4 4H20V20H4Z"/><path class="gl" d="M9 12H15"/>',
  // box with a tick
  passed:
    '<path class="gl" d="M4 4H20V20H4Z"/><path class="gl" stroke-width="2.4" d="M7.5 12.2L10.8 15.5L16.8 8.2"/>',
  // full box, struck through
  failed:
    '<path class="gf" d="M3.2 3.2H20.8V20.8H3.2Z"/><path class="gk" stroke-width="2.4" d="M7.5 7.5L16.5 16.5M16.5 7.5L7.5 16.5"/>',
  // a crack under the loupe
  finding:
    '<circle class="gl" cx="10" cy="10" r="7.2"/><path class="gl" stroke-width="2.6" d="M15.3 15.3L21.4 21.4"/><path class="gl" d="M11.6 3L8.6 8.2L11.6 11L8.4 17"/>',
  // leaves the planned line and comes back
  deviation:
    '<path class="gl" stroke-dasharray="2.6 2.2" d="M2 17H22"/><path class="gl" stroke-width="2.2" d="M2 17H5L9 7H15L19 17H22"/>',
  // the wheel is chocked
  hold: '<circle class="gl" cx="10" cy="11" r="7.6"/><circle class="gf" cx="10" cy="11" r="2.2"/><path class="gf" d="M15 20.6L23 20.6L23 12.4Z"/><path class="gl" d="M1 21H23"/>',
  // its bin is empty
  owed: '<path class="gl" d="M3 9V20H21V9"/><path class="gl" stroke-dasharray="2.4 2.2" d="M7 16V5.5H17V16"/>',
  // gone by van, comes back
  vendor:
    '<path class="gl" d="M1.6 5.5H13.6V17.5H1.6Z"/><path class="gl" d="M13.6 9.5H18.6L22.4 13.3V17.5H13.6"/><circle class="gf" cx="6" cy="18.4" r="2.7"/><circle class="gf" cx="17.6" cy="18.4" r="2.7"/>',
  // takes two people: delta with a 2
  critical:
    '<path class="gl" d="M1.6 3.5H22.4L12 21.8Z"/><path class="gl" stroke-width="1.9" d="M9.3 7.9C9.7 6.4 14.4 6.1 14.4 8.7C14.4 10.6 10.4 11.6 9.6 13.9H14.6"/>',
  // arm up
  gopen:
    '<path class="gl" stroke-width="2.6" d="M5 23V7"/><path class="gl" stroke-width="2.6" d="M5 13L19 2.6"/><path class="gl" d="M1.5 22.6H8.5"/>',
  // arm down
  gclosed:
    '<path class="gl" stroke-width="2.6" d="M5 23V7"/><path class="gf" d="M5 9.6H23V14.8H5Z"/><path class="gk" stroke-width="1.8" d="M10 9.4L8 15M15 9.4L13 15M20 9.4L18 15"/><path class="gl" d="M1.5 22.6H8.5"/>',
  // needle inside the marks
  calok:
    '<path class="gl" d="M3.6 17.5A9.4 9.4 0 1 1 20.4 17.5"/><path class="gl" d="M8 4.8L9.2 7.6M16 4.8L14.8 7.6"/><path class="gl" stroke-width="2.4" d="M12 15.5V7"/><path class="gl" d="M3 21H21"/>',
  // needle off the marks
  caldue:
    '<path class="gl" d="M3.6 17.5A9.4 9.4 0 1 1 20.4 17.5"/><path class="gl" d="M8 4.8L9.2 7.6M16 4.8L14.8 7.6"/><path class="gl" stroke-width="2.4" d="M12 15.5L18.6 12.2"/><path class="gl" stroke-width="2.4" d="M4.5 19.4L7.5 22.4M7.5 19.4L4.5 22.4"/><path class="gl" d="M10 21H21"/>',
  // the line is cut
  offline:
    '<path class="gl" d="M1.5 12H8M16 12H22.5"/><path class="gl" d="M8 8V16M16 8V16"/><path class="gl" stroke-width="2.2" d="M9.6 21L14.4 3"/>',
  // kept on this device, goes when the line is back
  queued:
    '<path class="gl" d="M3 14V21H21V14H15.5V16.5H8.5V14Z"/><path class="gl" d="M6 10.5H18M8 6.8H16M10 3.2H14"/>',
  // everything sent
  online: '<path class="gl" d="M1.5 12H7M17 12H22.5"/><path class="gf" d="M7 7.5H17V16.5H7Z"/>',
  // the car stands on its springs
  wheels:
    '<circle class="gl" cx="12" cy="14" r="7"/><circle class="gf" cx="12" cy="14" r="2"/><path class="gl" d="M1.5 21.6H22.5"/><path class="gl" stroke-width="2.2" d="M12 0.8V4.6M9.4 2.6L12 5.2L14.6 2.6"/>',
  // condition of the car
  engine: '<path class="gl" d="M3 20V10H6V7H10V4H14V7H18V10H21V20Z"/><path class="gl" d="M8 15H16"/>',
  // condition of the car
  bled: '<path class="gl" d="M12 2.5C15.5 7.5 18 10.7 18 14.6A6 6 0 0 1 6 14.6C6 10.7 8.5 7.5 12 2.5Z"/><path class="gl" d="M9.3 14.8L11.4 17L15 12.4"/>',
  // read before the first step
  caution:
    '<path class="gl" d="M12 2.6L22.6 21.2H1.4Z"/><path class="gl" stroke-width="2.4" d="M12 9V15.2M12 17V19.2"/>',
  // new every time: used once
  onetime:
    '<circle class="gl" cx="12" cy="12" r="9.4"/><path class="gl" stroke-width="2.2" d="M9.4 8.6L12.6 6.6V17.6"/>',
  // the schedule works round it
  pin: '<path class="gf" d="M7 2.5H17V5H15.6V11L19 14.6H5L8.4 11V5H7Z"/><path class="gl" d="M12 14.6V22.5"/>',
  // opens the place that clears it
  arrow: '<path class="gl" stroke-width="2.2" d="M3 12H20M13.5 5.5L20 12L13.5 18.5"/>',
  // hours or days that must pass or are left
  clock: '<circle class="gl" cx="12" cy="12" r="9.4"/><path class="gl" d="M12 6V12.4L16.4 15"/>',
  // moved to a later gate by an approved change
  deferred:
    '<path class="gl" stroke-dasharray="2.4 2.2" d="M4.5 22V9"/><path class="gl" stroke-width="2.6" d="M20 22V9"/><path class="gl" stroke-width="2" d="M4.5 6.5C8 .8 15.5 .8 19 5.4"/><path class="gf" d="M14.8 5.6L22 8.2L21.2 1.6Z"/>',
  // stands on axle stands
  nowheels:
    '<circle class="gl" stroke-dasharray="2.6 2.2" cx="12" cy="9.4" r="6.6"/><path class="gl" stroke-width="2" d="M12 16.6V19M7.5 21.8L12 17.6L16.5 21.8"/><path class="gl" d="M1.5 22.4H22.5"/>',
  // condition not so: dashed, struck
  noengine:
    '<path class="gl" stroke-dasharray="2.6 2.2" d="M3 20V10H6V7H10V4H14V7H18V10H21V20Z"/><path class="gl" stroke-width="2.2" d="M2.5 22L21.5 2.5"/>',
  // condition not so: dashed, struck
  nobled:
    '<path class="gl" stroke-dasharray="2.6 2.2" d="M12 2.5C15.5 7.5 18 10.7 18 14.6A6 6 0 0 1 6 14.6C6 10.7 8.5 7.5 12 2.5Z"/><path class="gl" stroke-width="2.2" d="M2.5 22L21.5 2.5"/>',
  // released to be pushed
  roll: '<circle class="gl" cx="15" cy="12.6" r="6.8"/><circle class="gf" cx="15" cy="12.6" r="1.8"/><path class="gl" d="M1.5 21.6H22.5"/><path class="gl" stroke-width="2" d="M1.5 8.5H6M.8 12.6H5M1.5 16.7H6"/>',
  // condition not so: dashed, struck
  noroll:
    '<circle class="gl" stroke-dasharray="2.6 2.2" cx="14" cy="12.6" r="6.8"/><path class="gl" d="M1.5 21.6H22.5"/><path class="gl" stroke-width="2.2" d="M4 21L22.5 3"/>',
  // condition of the car
  fuel: '<path class="gl" d="M4 21.5V4H14V21.5M2 21.5H16M7 7.5H11V11H7Z"/><path class="gl" d="M14 10H17V18A2 2 0 0 0 21 18V8L17.5 4.5"/>',
  // condition not so: dashed, struck
  nofuel:
    '<path class="gl" stroke-dasharray="2.6 2.2" d="M4 21.5V4H14V21.5M2 21.5H16"/><path class="gl" stroke-dasharray="2.6 2.2" d="M14 10H17V18A2 2 0 0 0 21 18V8L17.5 4.5"/><path class="gl" stroke-width="2.2" d="M2.5 23L21.5 2"/>',
  // nothing is lost, nothing is seen
  lock: '<path class="gl" d="M4 11H20V21.5H4Z"/><path class="gl" stroke-width="2.2" d="M7.5 11V7.5A4.5 4.5 0 0 1 16.5 7.5V11"/><path class="gl" stroke-width="2.2" d="M12 14.5V18"/>',
  // known by its own key
  tablet: '<path class="gl" d="M5 1.8H19V22.2H5Z"/><path class="gl" d="M5 17.8H19M10.5 20H13.5"/>',
  // of what, by whom, when
  photo:
    '<path class="gl" d="M2 6.5H7L8.8 4H15.2L17 6.5H22V20H2Z"/><circle class="gl" cx="12" cy="13" r="4.2"/>',
  // a wrong signature, still readable
  struck:
    '<path class="gl" d="M3 7H21M3 12H21M3 17H15"/><path class="gl" stroke-width="2.6" d="M2 21L22 3"/>',
  // a number made from everything before it
  seal: '<path class="gl" d="M12 1.8L14.6 4.6L18.3 3.9L18.8 7.7L22.2 9.5L20.5 12.9L22.2 16.3L18.8 18.1L18.3 21.9L14.6 21.2L12 24L9.4 21.2L5.7 21.9L5.2 18.1L1.8 16.3L3.5 12.9L1.8 9.5L5.2 7.7L5.7 3.9L9.4 4.6Z" transform="translate(0 -.9)"/><path class="gl" stroke-width="2" d="M8.4 12L11 14.6L15.8 9.2"/>',
  // the plan can’t be finished
  error:
    '<path class="gl" stroke-width="2.2" d="M12 1.8L22.2 12L12 22.2L1.8 12Z"/><path class="gl" stroke-width="2.4" d="M8.6 8.6L15.4 15.4M15.4 8.6L8.6 15.4"/>',
  // will block later
  gap: '<path class="gl" stroke-width="2.2" d="M1.5 12H8M16 12H22.5"/><path class="gl" stroke-dasharray="2 2" d="M8 12H16"/><path class="gl" d="M8 7.5V16.5M16 7.5V16.5"/>',
  // worth a thought
  hint: '<path class="gl" d="M3 4H21V16H12L7 21V16H3Z"/><path class="gl" stroke-width="2.2" d="M12 7V10.4M12 12V13.6"/>',
  // the tool is suspect from now
  dropped:
    '<path class="gl" d="M4 3L16 15M12.5 18.5L19.5 11.5"/><path class="gl" stroke-width="2.2" d="M2 22H22"/><path class="gl" d="M17 18L18.5 20M21 16L22.5 18"/>',
  // one more
  add: '<path class="gl" stroke-width="2.4" d="M12 4V20M4 12H20"/>',
};

/** Joint states and checks for rails: drawn anew on a grid of 12, never shown smaller than 12 px. */
export const RAIL_SIGNS = {
  open: '<path class="gl" d="M3.2 1.5H8.8L11.4 6L8.8 10.5H3.2L0.6 6Z"/>',
  snug: '<path class="gl" d="M3.2 1.5H8.8L11.4 6L8.8 10.5H3.2L0.6 6Z"/><path class="gf" d="M0.6 6H11.4L8.8 10.5H3.2Z"/>',
  final: '<path class="gf" d="M3 0H9L12 6L9 12H3L0 6Z"/><path class="gk gc" stroke-width="2" d="M6 0V12"/>',
  verified:
    '<path class="gf" d="M3 0H9L12 6L9 12H3L0 6Z"/><path class="gk gc" stroke-width="2" d="M4 2.5V9.5M8 2.5V9.5"/>',
  disturbed:
    '<path class="gf" d="M3 0H9L12 6L9 12H3L0 6Z"/><path class="gk gc" stroke-width="2" d="M4 0V6.5M8 5.5V12"/>',
  lateopen:
    '<path class="gf" d="M0 0H12V12H0Z"/><path class="gk" stroke-width="1.75" d="M4 2.4H8L10 6L8 9.6H4L2 6Z"/>',
  latedisturbed:
    '<path class="gf" d="M0 0H12V12H0Z"/><path class="gkf" d="M3.4 1H8.6L11.2 6L8.6 11H3.4L.8 6Z"/><path class="gl gc" stroke-width="2" d="M4 0V6.5M8 5.5V12"/>',
  passed:
    '<path class="gl" d="M1.5 1.5H10.5V10.5H1.5Z"/><path class="gl" stroke-width="1.5" d="M3.6 6.2L5.4 8L8.6 4"/>',
  due: '<path class="gl" d="M1.5 1.5H10.5V10.5H1.5Z"/>',
  failed:
    '<path class="gf" d="M1 1H11V11H1Z"/><path class="gk" stroke-width="1.5" d="M3.5 3.5L8.5 8.5M8.5 3.5L3.5 8.5"/>',
  // A check that is due in a stage behind stands on a tile as well.
  latedue: '<path class="gf" d="M0 0H12V12H0Z"/><path class="gk" stroke-width="1.75" d="M3 3H9V9H3Z"/>',
};

export type GlyphName = keyof typeof GLYPHS;
export type RailSign = keyof typeof RAIL_SIGNS;
