/** The engine by its parts, for the bench and for those who want to look inside. */
export { domainOf } from './geometry/domain.ts';
export { meshDomain } from './mesh/mesh-domain.ts';
export { equipotentialLines } from './sample/contours.ts';
export { fieldLines } from './sample/streamlines.ts';
export { discretise, frameOf } from './solve/discretisation.ts';
export { solveDual } from './solve/dual.ts';
export { fanStore } from './solve/fan.ts';
export { Workspace } from './solve/multifrontal.ts';
export { solvePrimal } from './solve/primal.ts';
export { solveDomain } from './solve/solve-field.ts';
