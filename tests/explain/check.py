"""Everything that is asked of the explanation of one rig. Each check yields what is wrong."""
import json
import os
import subprocess

from claims import claims
from context import Context
from lesson import STEP_NUMBER, Lesson, equations_of_text
from truth import Truth

SECONDS = 20  # more than any explanation may take, in a sanitized build too


def run(command, *arguments):
    done = subprocess.run([command, *arguments], capture_output=True, text=True, timeout=SECONDS, check=False)
    return done.returncode, done.stdout, done.stderr


def plain(element):
    """Its words, without the number of a step."""
    return element.kind, STEP_NUMBER.sub('', element.text)


def forms_agree(lesson, text):
    """The text form has the same equations in the same order."""
    here, there = lesson.printed(), equations_of_text(text)
    for a, b in zip(here, there):
        if a != b:
            yield f'the page has `{a}`, the text `{b}`'
            return
    if len(here) != len(there):
        yield f'the page has {len(here)} equations, the text {len(there)}'


def text_is_plain(text):
    for line in text.splitlines():
        if len(line) > 80 or not line.isascii():
            yield f'text that is too wide, or no ASCII: {line}'
            return


def nothing_new(all_of_it, part, what):
    """What one road tells is told with both of them too, in the same order; its head asks and names less."""
    known = [plain(e) for e in all_of_it.elements]
    at = 0
    for element in part.elements:
        if element.kind == 'pair' and element.section in ('', 'Given'):
            continue
        words = plain(element)
        if words not in known[at:]:
            yield f'{what} alone tells: {element}'
            return
        at = known.index(words, at) + 1


def check(command, path):
    """(whether the rig has no explanation, all that is wrong)."""
    asked = {'page': ['--as', 'html'], 'text': [], 'forces': ['--as', 'html', '--steps', 'forces'],
             'distances': ['--as', 'html', '--steps', 'distances'], 'ideal': ['--as', 'html', '--ideal'],
             'ideal text': ['--ideal']}
    verdict, report, said = run(command, 'report', '--as', 'json', path)
    told = {name: run(command, 'explain', *options, path) for name, options in asked.items()}
    wrong = [f'explain {name}: status {status}, the report has {verdict}: {err.strip()}'
             for name, (status, _, err) in told.items() if status != (2 if verdict == 2 else 0)]
    if wrong or verdict == 2:
        wrong += [f'explain {name}: says otherwise than the report' for name, (_, out, err) in told.items()
                  if not wrong and (err != said or out)]
        return True, wrong
    with open(path, encoding='utf-8') as file:
        truth = Truth(file.read(), os.path.dirname(path), json.loads(report))
    lessons = {name: Lesson(out) for name, (_, out, _) in told.items() if 'text' not in name}
    for name, lesson in lessons.items():
        if not lesson.printed():
            wrong.append(f'{name}: no equation at all')
        context = Context(lesson)
        wrong += [f'{name}: {fault}' for fault in context.check()]
        wrong += [f'{name}: {fault}' for fault in claims(lesson, context, truth, name)]
    page, text = lessons['page'], told['text'][1]
    wrong += [*forms_agree(page, text), *text_is_plain(text), *forms_agree(lessons['ideal'], told['ideal text'][1])]
    for road in ('forces', 'distances'):
        wrong += nothing_new(page, lessons[road], road)
    return False, wrong
