"""The LibreOffice component: hands cells to functions.py, and errors back as error cells.

A function that cannot answer raises IllegalArgumentException, which Calc shows as Err:502. So a bad
input never becomes a number, and what is reckoned from it is Err:502 too; text in place of a number
would be left out by SUM in silence. The words are had from the function WHY, with the same arguments.
"""

import pathlib

import turnwright as tw
import uno
import unohelper
from com.sun.star.lang import IllegalArgumentException, XServiceInfo, XServiceName
from com.sun.star.uno import RuntimeException
from functions import FUNCTIONS, why, with_unit
from org.turnwright.cells import XCells

SERVICE = "org.turnwright.cells"
ADD_IN = "com.sun.star.sheet.AddIn"

# LibreOffice gives a component its own place as a URL.
_here = __file__ if not __file__.startswith("file:") else uno.fileUrlToSystemPath(__file__)
for _library in pathlib.Path(_here).parent.glob("library/*turnwright*"):
    tw.use(_library)


class Cells(unohelper.Base, XCells, XServiceInfo, XServiceName):
    """One object answers all cells."""

    def __init__(self, context):
        self.context = context

    def withUnit(self, number, unit):
        return _answered(self, lambda: with_unit(number, unit))

    def why(self, function, arguments):
        return why(function, arguments)

    def getServiceName(self):
        return SERVICE

    def getImplementationName(self):
        return SERVICE

    def supportsService(self, name):
        return name in self.getSupportedServiceNames()

    def getSupportedServiceNames(self):
        return (SERVICE, ADD_IN)


def _answered(cells, ask):
    try:
        return ask()
    except tw.TurnwrightError as error:
        raise IllegalArgumentException(str(error), cells, 0) from error
    except ImportError as trouble:
        raise RuntimeException(str(trouble), cells) from trouble


def _method(function):
    return lambda cells, *given: _answered(cells, lambda: function.ask(given))


for _name, _function in FUNCTIONS.items():
    setattr(Cells, _name.lower(), _method(_function))

g_ImplementationHelper = unohelper.ImplementationHelper()
g_ImplementationHelper.addImplementation(Cells, SERVICE, (ADD_IN,))
