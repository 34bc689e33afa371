"""Makes the two faces here from Inter (OFL-1.1): the digits of the character map become its tabular
figures, because the pictures are drawn by a library that knows no OpenType features, and the family
gets another name, because it is a modified copy. Nothing else changes.

    pip install fonttools==4.68.0
    python3 tabular_figures.py /usr/share/fonts/opentype/inter   # Debian: fonts-inter 3.19
"""

import sys
from pathlib import Path

from fontTools.ttLib import TTFont

FAMILY = "Backlift Text"
SOURCES = {"Inter-Regular.otf": "Regular", "Inter-SemiBold.otf": "SemiBold"}


def tabular(font):
    """Glyph names of the default figures and of their tabular forms."""
    gsub = font["GSUB"].table
    for record in gsub.FeatureList.FeatureRecord:
        if record.FeatureTag == "tnum":
            for index in record.Feature.LookupListIndex:
                for table in gsub.LookupList.Lookup[index].SubTable:
                    yield from getattr(table, "ExtSubTable", table).mapping.items()
            return


for source, style in SOURCES.items():
    font = TTFont(Path(sys.argv[1]) / source, recalcTimestamp=False)
    figures = dict(tabular(font))
    for table in font["cmap"].tables:
        if table.isUnicode() and table.format != 14:
            for digit in map(ord, "0123456789"):
                table.cmap[digit] = figures.get(table.cmap[digit], table.cmap[digit])
    for record in font["name"].names:
        name = {1: FAMILY, 3: f"{FAMILY} {style}", 4: f"{FAMILY} {style}", 16: FAMILY}.get(record.nameID)
        if record.nameID == 6:
            name = f"{FAMILY.replace(' ', '')}-{style}"
        if name:
            font["name"].setName(name, record.nameID, record.platformID, record.platEncID, record.langID)
    cff = font["CFF "].cff
    cff.fontNames[0] = f"{FAMILY.replace(' ', '')}-{style}"
    cff.topDictIndex[0].FamilyName = FAMILY
    cff.topDictIndex[0].FullName = f"{FAMILY} {style}"
    font.save(Path(__file__).parent / f"{FAMILY.replace(' ', '')}-{style}.otf")
