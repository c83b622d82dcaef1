"""Writes what LibreOffice must know of the functions, out of the table of functions.py, into a folder:

    python3 describe.py FOLDER

XCells.idl (the interface, to be compiled), CalcAddIns.xcu (names and words for the function wizard),
description.xml and META-INF/manifest.xml. build.sh calls it.
"""

import pathlib
import sys
from xml.sax.saxutils import escape, quoteattr

from functions import FUNCTIONS, WHY_ARGUMENTS, WHY_WORDS, WITHUNIT_ARGUMENTS, WITHUNIT_WORDS

IDENTIFIER = "org.turnwright.cells"
VERSION = "0.1.0"


def idl() -> str:
    lines = []
    for function in FUNCTIONS.values():
        arguments = ", ".join(f"[in] any {a.name.replace('_', '')}" for a in function.arguments)
        lines.append(f"    double {function.name.lower()}({arguments});")
    lines.append("    string withUnit([in] any number, [in] any unit);")
    # A sequence at the end takes all arguments that are left.
    lines.append("    string why([in] any function, [in] sequence<any> arguments);")
    body = "\n".join(lines)
    return (
        "module org { module turnwright { module cells {\n"
        "interface XCells : com::sun::star::uno::XInterface\n"
        f"{{\n{body}\n}};\n}}; }}; }};\n"
    )


def xcu() -> str:
    everything = [(f.name.lower(), f.name, f.words, f.arguments) for f in FUNCTIONS.values()]
    everything.append(("withUnit", "WITHUNIT", WITHUNIT_WORDS, WITHUNIT_ARGUMENTS))
    everything.append(("why", "WHY", WHY_WORDS, WHY_ARGUMENTS))
    nodes = "".join(node(*one) for one in everything)
    return (
        '<?xml version="1.0" encoding="UTF-8"?>\n'
        '<oor:component-data xmlns:oor="http://openoffice.org/2001/registry"'
        ' xmlns:xs="http://www.w3.org/2001/XMLSchema" oor:name="CalcAddIns"'
        ' oor:package="org.openoffice.Office">\n'
        f'<node oor:name="AddInInfo"><node oor:name={quoteattr(IDENTIFIER)} oor:op="replace">'
        f'<node oor:name="AddInFunctions">\n{nodes}</node></node></node>\n</oor:component-data>\n'
    )


def node(method, name, words, arguments) -> str:
    parameters = "".join(
        f'  <node oor:name={quoteattr(argument.name.replace("_", ""))} oor:op="replace">'
        + prop("DisplayName", argument.name.replace("_", " "))
        + prop("Description", argument.words)
        + "</node>\n"
        for argument in arguments
    )
    return (
        f'<node oor:name={quoteattr(method)} oor:op="replace">'
        + prop("DisplayName", name)
        + prop("Description", words)
        + '<prop oor:name="Category"><value>Add-In</value></prop>'
        + prop("CompatibilityName", name)
        + f'<node oor:name="Parameters">\n{parameters}</node></node>\n'
    )


def prop(name, text) -> str:
    return f'<prop oor:name={quoteattr(name)}><value xml:lang="en">{escape(text)}</value></prop>'


MANIFEST = """<?xml version="1.0" encoding="UTF-8"?>
<manifest:manifest xmlns:manifest="http://openoffice.org/2001/manifest">
<manifest:file-entry manifest:full-path="types.rdb" manifest:media-type="application/vnd.sun.star.uno-typelibrary;type=RDB"/>
<manifest:file-entry manifest:full-path="cells.py" manifest:media-type="application/vnd.sun.star.uno-component;type=Python"/>
<manifest:file-entry manifest:full-path="CalcAddIns.xcu" manifest:media-type="application/vnd.sun.star.configuration-data"/>
</manifest:manifest>
"""

DESCRIPTION = f"""<?xml version="1.0" encoding="UTF-8"?>
<description xmlns="http://openoffice.org/extensions/description/2006">
<identifier value={quoteattr(IDENTIFIER)}/>
<version value={quoteattr(VERSION)}/>
<display-name><name lang="en">turnwright: turning in cells</name></display-name>
</description>
"""


def main() -> None:
    folder = pathlib.Path(sys.argv[1])
    (folder / "META-INF").mkdir(parents=True, exist_ok=True)
    files = {
        "XCells.idl": idl(),
        "CalcAddIns.xcu": xcu(),
        "META-INF/manifest.xml": MANIFEST,
        "description.xml": DESCRIPTION,
    }
    for name, text in files.items():
        (folder / name).write_text(text, encoding="utf-8")


if __name__ == "__main__":
    main()
