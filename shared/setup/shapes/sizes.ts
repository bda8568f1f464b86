/** Sizes that no one can cut, or that no bench can hold. */
import type { Shape, Value } from '../../block/tree.ts';
import type { Report } from '../report.ts';
import { greatestSize_mm, leastSize_mm } from './form.ts';

/** True where every size of the shape lies between 0.001 mm and 10 m; otherwise one finding. */
export function sizesFit(shape: Shape, report: Report): boolean {
  for (const size of sizesOf(shape)) {
    if (size.value >= leastSize_mm && size.value <= greatestSize_mm) continue;
    report('size-impossible', {
      span: size.span,
      message:
        size.value > greatestSize_mm
          ? `${shape.name.text} would be ${size.value / 1000} m in size.`
          : `${shape.name.text} would have no size here: metal is at least ${leastSize_mm} mm.`,
    });
    return false;
  }
  return true;
}

function sizesOf(shape: Shape): readonly Value[] {
  switch (shape.shape) {
    case 'bar':
    case 'prong':
      return [shape.size.width, shape.size.height];
    case 'disc':
      return [shape.diameter];
    case 'ring':
      return [shape.diameter, shape.inside, shape.wall, shape.opening?.width ?? null].filter(
        (v) => v !== null,
      );
    case 'box':
      return [shape.size.width, shape.size.height, shape.wall, shape.opening?.width ?? null].filter(
        (v) => v !== null,
      );
    case 'spike':
      return [shape.base, shape.length];
    case 'strip':
      return [shape.width];
    case 'outline':
      return [];
  }
}
