// Pages that commands other than `report` write: what is run for the text form; the same with `--as html -o` has to
// tell all of it. A command that writes nothing but pages has its `headings` here instead. `says` is what the first sheet of paper must not lack.
'use strict';

const BENCH = 'docs/examples/bench-readings.csv';
const SET = 'docs/examples/pulleys.set';
const ODD = 'tests/pages/tables/odd-readings.csv';

// A worked solution of a rig; `steps` fold.
function solution(rig) {
    const name = rig.replace(/^.*\//, '').replace(/\.ini$/, '');
    return { name: `explain-${name}`, args: ['explain', rig], steps: true, says: ['Arithmetic on the numbers typed in, no approval.', 'are no part of this solution'] };
}

const SOLVED = ['class-four-parts', 'courtyard-3d', 'counterweight-batten', 'us-units', 'spreader'];

const pages = [
    { name: 'lab', args: ['lab', BENCH], says: ['Arithmetic on the numbers typed in, no approval.', 'in no mean and no fit'] },
    { name: 'lab-odd', args: ['lab', ODD], says: ['Arithmetic on the numbers typed in, no approval.', 'in no mean and no fit'] },
    { name: 'worksheet', args: ['worksheet', '--students', '2', '--key', '/dev/null', SET], headings: ['Student 1', 'Student 2', 'Problem 6: find the mistake'], says: ['Figures: seed 1, student 1.', 'Name, date:'] },
    { name: 'worksheet-key', args: ['worksheet', SET], headings: ['Student 1', 'Key', 'Answers of student 1', 'Problem 1 - worked solution'], says: ['Figures: seed 1, student 1.'] },
    ...SOLVED.map((name) => solution(`docs/examples/${name}.ini`)),
    ...['long-words', 'markup', 'scripts'].map((name) => solution(`tests/pages/rigs/${name}.ini`)),
];

module.exports = { pages };
