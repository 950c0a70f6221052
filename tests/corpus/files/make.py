"""Makes the books of this folder: `python3 make.py`, with the programs that README.md names installed.

Each holds the sheet Journals with three invented journals and what the program that makes it adds of its own. The files
are kept, so that they stay what these versions wrote; they are made anew only when a book is added.
"""

import datetime
import os
import shutil
import subprocess
import tempfile

import openpyxl
import pandas
import xlsxwriter
from openpyxl.chart import BarChart, Reference
from openpyxl.comments import Comment
from openpyxl.formatting.rule import CellIsRule
from openpyxl.styles import Font, NamedStyle, PatternFill, Protection
from openpyxl.utils.datetime import CALENDAR_MAC_1904
from openpyxl.workbook.defined_name import DefinedName
from openpyxl.worksheet.datavalidation import DataValidation
from openpyxl.worksheet.table import Table, TableStyleInfo

HEADERS = ["Part", "Engine", "Fit", "Position", "A 0", "Note"]
ROWS = [["J%d" % n, "E1", "big end", n, size, "new"] for n, size in enumerate([42.0015, 42.002, 42.001], 1)]
DAY = datetime.datetime(2026, 1, 2)


def of_xlsxwriter(name, fill, options=None):
    book = xlsxwriter.Workbook(name, options or {})
    book.set_properties({"created": DAY})
    sheet = book.add_worksheet("Journals")
    sheet.write_row(0, 0, HEADERS)
    for row, values in enumerate(ROWS, 1):
        sheet.write_row(row, 0, values)
    fill(book, sheet)
    book.close()


def table_with_totals(book, sheet):
    columns = [{"header": text} for text in HEADERS]
    columns[0]["total_string"] = "Total"
    columns[4]["total_function"] = "average"
    sheet.add_table("A1:F5", {"columns": columns, "total_row": True, "name": "Readings"})


def calculated_column(book, sheet):
    columns = [{"header": text} for text in HEADERS]
    columns[5] = {"header": "Twice", "formula": "=2*Readings[[#This Row],[A 0]]"}
    sheet.add_table("A1:F4", {"columns": columns, "name": "Readings", "style": "Table Style Light 9"})


def sparklines(book, sheet):
    sheet.add_sparkline("F6", {"range": "Journals!E2:E4", "type": "column", "markers": True})
    sheet.add_sparkline("F7", {"range": "Journals!E2:E4", "show_hidden": True})


def dynamic_arrays(book, sheet):
    sheet.write_dynamic_array_formula("A7:A9", "=SORT(E2:E4)", None, 42.001)
    sheet.write_formula("D7", "=SUM(LET(x,E2:E4,x))", None, 126.0045)
    sheet.write_array_formula("E7:E8", "{=E2:E3*2}", None, 84.003)


def filtered(book, sheet):
    sheet.autofilter("A1:F4")
    sheet.filter_column("F", "x == new")
    sheet.filter_column_list("D", [1, 2, 3])
    sheet.freeze_panes(1, 1)
    sheet.set_column("E:E", 12, book.add_format({"num_format": "0.0000"}), {"level": 1})


def rules(book, sheet):
    red = book.add_format({"bg_color": "#FFC7CE"})
    sheet.conditional_format("E2:E4", {"type": "data_bar", "data_bar_2010": True})
    sheet.conditional_format("E2:E4", {"type": "icon_set", "icon_style": "3_arrows"})
    sheet.conditional_format("A2:A4", {"type": "duplicate", "format": red})
    sheet.data_validation("C2:C99", {"validate": "list", "source": ["big end", "main"]})


def rich(book, sheet):
    bold = book.add_format({"bold": True})
    sheet.write_rich_string("F2", "polished ", bold, "twice", " by hand")
    sheet.write_comment("E3", "measured again", {"author": "E. Quill"})
    sheet.write_url("F3", "https://example.org/manual", string="manual")
    sheet.write_url("F4", "internal:Journals!A1", string="top")


def drawn(book, sheet):
    chart = book.add_chart({"type": "line"})
    chart.add_series({"values": "=Journals!$E$2:$E$4"})
    sheet.insert_chart("A7", chart)
    sheet.insert_textbox("J7", "Torque the caps first")


def printed(book, sheet):
    sheet.set_landscape()
    sheet.repeat_rows(0)
    sheet.print_area("A1:F4")
    sheet.set_header("&LEngine 1&R&D")
    sheet.set_h_pagebreaks([3])
    sheet.protect("oil", {"sort": True})
    book.define_name("Sizes", "=Journals!$E$2:$E$4")
    book.define_name("Journals!Local", "=Journals!$A$1")


def with_dates(book, sheet):
    sheet.write_datetime("F2", DAY, book.add_format({"num_format": "yyyy-mm-dd"}))
    sheet.write_boolean("F3", True)


def strings_within(book, sheet):
    sheet.write("F2", "  edge  ")
    sheet.write("F3", "\u00b5\u2212\U0001f600")


def of_openpyxl(name, fill):
    book = openpyxl.Workbook()
    book.properties.created = book.properties.modified = DAY
    sheet = book.active
    sheet.title = "Journals"
    for row in [HEADERS, *ROWS]:
        sheet.append(row)
    fill(book, sheet)
    book.save(name)


def openpyxl_table(book, sheet):
    table = Table(displayName="Readings", ref="A1:F5")
    table.totalsRowCount = 1
    table._initialise_columns()
    for column, text in zip(table.tableColumns, HEADERS):
        column.name = text
    table.tableColumns[0].totalsRowLabel = "Total"
    table.tableColumns[4].totalsRowFunction = "count"
    table.autoFilter.ref = "A1:F4"
    table.tableStyleInfo = TableStyleInfo(name="TableStyleMedium9", showRowStripes=True)
    sheet["A5"] = "Total"
    sheet["E5"] = "=SUBTOTAL(103,Readings[A 0])"
    sheet.add_table(table)


def openpyxl_styled(book, sheet):
    style = NamedStyle(name="Reading", font=Font(italic=True), number_format="0.000")
    for row in range(2, 5):
        sheet.cell(row, 5).style = style
        sheet.cell(row, 5).protection = Protection(locked=False)
    sheet["F2"].fill = PatternFill("solid", fgColor="FFEEEEEE")
    sheet["F3"].comment = Comment("measured again", "E. Quill")
    sheet.conditional_formatting.add("E2:E4", CellIsRule(operator="lessThan", formula=["42"]))
    rule = DataValidation(type="list", formula1='"big end,main"')
    rule.add("C2:C99")
    sheet.add_data_validation(rule)
    book.defined_names.append(DefinedName("Sizes", attr_text="Journals!$E$2:$E$4"))
    sheet.sheet_view.zoomScale = 120


def openpyxl_1904(book, sheet):
    book.epoch = CALENDAR_MAC_1904
    sheet["F2"] = DAY
    sheet["F3"] = datetime.time(12, 30)


def openpyxl_charts(book, sheet):
    chart = BarChart()
    chart.add_data(Reference(sheet, min_col=5, min_row=1, max_row=4), titles_from_data=True)
    sheet.add_chart(chart, "A7")
    other = book.create_chartsheet("Chart")
    again = BarChart()
    again.add_data(Reference(sheet, min_col=5, min_row=1, max_row=4))
    other.add_chart(again)
    book.create_sheet("Hidden").sheet_state = "hidden"


def of_pandas(name, engine):
    frame = pandas.DataFrame(ROWS, columns=HEADERS)
    with pandas.ExcelWriter(name, engine=engine) as writer:
        frame.to_excel(writer, sheet_name="Journals", index=False)
        frame.describe().to_excel(writer, sheet_name="Statistics")


def converted(name, fill, convert):
    """What another program makes of a book of XlsxWriter's when it opens and saves it."""
    with tempfile.TemporaryDirectory() as folder:
        source = os.path.join(folder, "source.xlsx")
        of_xlsxwriter(source, fill)
        convert(source, name, folder)


def by_libreoffice(source, name, folder):
    ods = ["soffice", "--headless", "--convert-to", "ods", "--outdir", folder, source]
    subprocess.run(ods, check=True, capture_output=True)
    os.remove(source)
    back = ["soffice", "--headless", "--convert-to", "xlsx", "--outdir", folder, source[:-5] + ".ods"]
    subprocess.run(back, check=True, capture_output=True)
    shutil.move(source, name)


def by_gnumeric(source, name, folder):
    middle = os.path.join(folder, "middle.gnumeric")
    subprocess.run(["ssconvert", source, middle], check=True, capture_output=True)
    subprocess.run(["ssconvert", middle, name], check=True, capture_output=True)


WRITERS = {
    "totals": table_with_totals,
    "calculated-column": calculated_column,
    "sparklines": sparklines,
    "dynamic-arrays": dynamic_arrays,
    "filter": filtered,
    "rules": rules,
    "rich-text": rich,
    "drawings": drawn,
    "print": printed,
}

if __name__ == "__main__":
    for what, fill in WRITERS.items():
        of_xlsxwriter("xlsxwriter-%s.xlsx" % what, fill)
    of_xlsxwriter("xlsxwriter-1904.xlsx", with_dates, {"date_1904": True})
    of_xlsxwriter("xlsxwriter-constant-memory.xlsx", strings_within, {"constant_memory": True})
    of_openpyxl("openpyxl-totals.xlsx", openpyxl_table)
    of_openpyxl("openpyxl-styles.xlsx", openpyxl_styled)
    of_openpyxl("openpyxl-1904.xlsx", openpyxl_1904)
    of_openpyxl("openpyxl-charts.xlsx", openpyxl_charts)
    of_pandas("pandas-openpyxl.xlsx", "openpyxl")
    of_pandas("pandas-xlsxwriter.xlsx", "xlsxwriter")
    for what in ["filter", "rules", "rich-text", "drawings", "print", "calculated-column"]:
        converted("libreoffice-%s.xlsx" % what, WRITERS[what], by_libreoffice)
        converted("gnumeric-%s.xlsx" % what, WRITERS[what], by_gnumeric)
    converted("libreoffice-dates.xlsx", with_dates, by_libreoffice)
    converted("gnumeric-dates.xlsx", with_dates, by_gnumeric)
