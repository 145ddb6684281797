"""A worked solution read back: its elements in order, from its page or from its text."""
import html.parser
import re


# The case that a section is about; Given serves both.
CASES = {'Given': None, 'Forces without friction': 'hold', 'Distances': 'hold', 'Both roads': 'hold', 'Work': 'hold',
         'Friction': 'raise', 'Efficiency': 'raise', "The handbook's rule of thumb": 'raise'}
# A section about both says which one it has come to, in the head of a step or in a paragraph.
MARKS = {'step': ((re.compile(r'at rest$'), 'hold'), (re.compile(r'while the load rises$'), 'raise')),
         'paragraph': ((re.compile(r'^At rest'), 'hold'), (re.compile(r'^While the load (rises|is raised)'), 'raise'))}
STEP_NUMBER = re.compile(r'^\d+\. ')


class Element:
    """A piece of a lesson: where it stands, which case it is about, and its words."""

    def __init__(self, kind, text, section, step, case):
        self.kind, self.text, self.section, self.step, self.case = kind, text, section, step, case

    def equation(self):
        """The equation in it: a result up to a remark, a bullet behind its colon."""
        return {'pair': self.text.split(';')[0], 'bullet': self.text.split(': ')[-1]}.get(self.kind, self.text)

    def __repr__(self):
        return f'{self.section} / {self.step}: {self.text}'


class Table:
    """A table: its rows, the first of them its head."""

    def __init__(self, section, step, case):
        self.section, self.step, self.case, self.rows = section, step, case, []


class PageReader(html.parser.HTMLParser):
    """Collects the elements of a page. Drawings are kept apart."""

    KINDS = {'h1': 'title', 'h2': 'heading', 'h3': 'step', 'p': 'paragraph', 'li': 'bullet', 'dt': 'label',
             'dd': 'pair', 'th': 'cell', 'td': 'cell'}
    APART = ('svg', 'nav', 'style', 'footer')

    def __init__(self):
        super().__init__(convert_charrefs=True)
        self.elements, self.open, self.kind = [], None, None
        self.section = self.step = ''
        self.case = None
        self.apart = 0
        self.pictures = []
        self.tables = []

    def handle_starttag(self, tag, attributes):
        attributes = dict(attributes)
        if tag in self.APART:
            self.apart += 1
        if tag == 'svg':
            self.pictures.append('')
        if self.apart:
            return
        if tag == 'table':
            self.tables.append(Table(self.section, self.step, self.case))
        if tag == 'tr' and self.tables:
            self.tables[-1].rows.append([])
        if tag not in self.KINDS:
            return
        kind = self.KINDS[tag]
        self.open, self.kind = [], 'equation' if attributes.get('class') == 'equation' else kind

    def handle_endtag(self, tag):
        if tag in self.APART:
            self.apart -= 1
        elif tag == 'details' and not self.apart:
            self.step = ''
        elif not self.apart and tag in self.KINDS and self.open is not None:
            self.end()

    def end(self):
        text, self.open = ' '.join(''.join(self.open).split()), None
        if self.kind == 'heading':
            self.section, self.step = text, ''
        if self.kind == 'step':
            self.step = text
        if self.kind in ('heading', 'step'):
            self.case = CASES.get(self.section)
        self.case = next((case for mark, case in MARKS.get(self.kind, ()) if mark.search(text)), self.case)
        if self.kind == 'cell':
            self.tables[-1].rows[-1].append(text)
        if text:
            self.elements.append(Element(self.kind, text, self.section, self.step, self.case))

    def handle_data(self, data):
        if self.apart and self.pictures:
            self.pictures[-1] += data
        if self.open is not None and not self.apart:
            self.open.append(data)


class Lesson:
    """The elements of a page."""

    def __init__(self, page):
        reader = PageReader()
        reader.feed(page)
        reader.close()
        self.elements, self.pictures, self.tables = reader.elements, reader.pictures, reader.tables
        # A result in a pair, or what is said of a stop, is held to its word like any other equation.
        self.equations = [e for e in self.elements if e.kind == 'equation' or e.kind == 'pair' and ' = ' in e.text
                          or e.kind == 'bullet' and ' = k' in e.text]

    def printed(self):
        """The equations that stand on a line of their own."""
        return [e.text for e in self.elements if e.kind == 'equation']

    def sections(self):
        return [e.text for e in self.elements if e.kind == 'heading']

    def words(self, section=None):
        return ' '.join(e.text for e in self.elements if section is None or e.section == section)


def equations_of_text(text):
    """The equations of the text form: set in by 4, what goes on below them by 8 or more."""
    found = []
    for line in text.splitlines():
        if re.match(r' {4}\S', line):
            found.append(line.strip())
        elif re.match(r' {8}\S', line) and found and found[-1] is not None:
            found[-1] += ' ' + line.strip()
        elif found and found[-1] is not None:
            found.append(None)
    return [line for line in found if line is not None]
