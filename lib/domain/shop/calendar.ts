/** The shop's calendar: by which time zone a moment is a day. */

/**
 * Qualifications, calibrations and lots are judged by days, and what was judged stays judged: once a car is begun, the
 * calendar stays.
 */
export const mayMoveCalendar = (carsBegun: number): boolean => carsBegun === 0;
