import { GradeForm } from './grade-form.tsx';
import { ListForm } from './list-form.tsx';
import { NextCheck } from './next-check.tsx';
import { NextLeave } from './next-leave.tsx';
import { NextPartOut } from './next-part-out.tsx';
import { NextProof } from './next-proof.tsx';
import { NextReceive } from './next-receive.tsx';
import { NextRemedy } from './next-remedy.tsx';
import { NextUnit } from './next-unit.tsx';
import { SaleForm } from './sale-form.tsx';
import { useUnit } from './unit-context.ts';

/** What the advised deed needs from the person. */
export function NextBody() {
  const { advice } = useUnit().file;
  switch (advice.do) {
    case 'receive':
      return <NextReceive />;
    case 'check':
      return advice.check && <NextCheck check={advice.check} />;
    case 'remedy':
    case 'transplant':
      return advice.remedy && <NextRemedy remedy={advice.remedy} />;
    case 'part-out':
      return <NextPartOut />;
    case 'leave':
      return <NextLeave />;
    case 'prove':
      return <NextProof />;
    case 'grade':
      return <GradeForm />;
    case 'list':
      return <ListForm />;
    case 'sell':
      return <SaleForm as="working" />;
    case 'nothing':
      return <NextUnit />;
  }
}
