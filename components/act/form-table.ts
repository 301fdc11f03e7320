/** Claim type → its form: every act of a car that has one here. */
import type { ActRef, Desk } from '@/lib/wire/views/desk';
import type { FormSpec, FormTable, Values } from './form';
import { noteForm } from './forms/asking';
import { wholeForms } from './forms/car';
import { checkForms } from './forms/checks';
import { findingForms } from './forms/findings';
import { jointForms } from './forms/joints';
import { matterForms } from './forms/matters';
import { operationForms } from './forms/operations';
import { partForms } from './forms/parts';
import { withPhotos } from './forms/photos';
import { thingForms } from './forms/things';

const FORMS: FormTable = {
  ...operationForms,
  ...jointForms,
  ...checkForms,
  ...matterForms,
  ...findingForms,
  ...thingForms,
  ...partForms,
  ...wholeForms,
  // What is seen best: as found, as it failed or passed, as left, as finished; and a joint as it was signed.
  'report-finding': withPhotos(findingForms['report-finding']),
  'fail-check': withPhotos(checkForms['fail-check']),
  'pass-check': withPhotos(checkForms['pass-check']),
  'pause-operation': withPhotos(operationForms['pause-operation']),
  'finish-operation': withPhotos(operationForms['finish-operation']),
  'add-note': withPhotos(noteForm),
  'snug-joint': withPhotos(jointForms['snug-joint']),
  'verify-joint': withPhotos(jointForms['verify-joint']),
  'recheck-joint': withPhotos(jointForms['recheck-joint']),
  'reject-joint': withPhotos(jointForms['reject-joint']),
  'report-disturbed': withPhotos(jointForms['report-disturbed']),
  // Signed on the joint's own sheet, where the readings are.
  'final-joint': null,
  'report-over-torque': null,
  // Begun where the shop is set up.
  'start-car': null,
  // Given on a grid of their own.
  'grade-parts': null,
  'record-donor': null,
  // Picked from the page of the kit.
  'pick-kit': null,
  'empty-kit': null,
  'report-kit-line': null,
};

/** Null where the act has a screen of its own. */
export const formFor = (act: ActRef, desk: Desk, values: Values): FormSpec | null =>
  FORMS[act.type]?.(act, desk, values) ?? null;

export const hasForm = ({ type }: ActRef): boolean => FORMS[type] !== null;
