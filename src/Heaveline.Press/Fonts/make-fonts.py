#!/usr/bin/env python3
"""Cuts the three faces of Heaveline Sans out of Debian's fonts-inter-variable (see README.md). Run: /usr/bin/python3 make-fonts.py"""
from fontTools import subset
from fontTools.ttLib import TTFont
from fontTools.varLib import instancer

SOURCE = "/usr/share/fonts/truetype/inter-vf/"
FACES = [
    ("Regular", "Inter-roman.var.ttf", 400),
    ("Bold", "Inter-roman.var.ttf", 650),
    ("Italic", "Inter-italic.var.ttf", 400),
]
KEPT = (
    list(range(0x20, 0x7F)) + list(range(0xA0, 0x180))      # Latin-1, Latin Extended-A
    + list(range(0x370, 0x400)) + [0x1E9E]                  # Greek
    + list(range(0x2010, 0x2060)) + list(range(0x2070, 0x20A0)) + [0x20AC]   # punctuation, super- and subscripts, euro
    + list(range(0x2190, 0x21D5)) + list(range(0x2200, 0x22FF))              # arrows, mathematics
    + list(range(0x25A0, 0x25D0)) + [0x2126, 0x2713, 0x2717, 0x1D62, 0x2C7C]
)

for face, file, weight in FACES:
    font = TTFont(SOURCE + file, recalcTimestamp=False)
    instancer.instantiateVariableFont(font, {"wght": weight}, inplace=True)
    # Figures of equal width become the usual ones: columns of a table then line up.
    equal = {}
    for record in font["GSUB"].table.FeatureList.FeatureRecord:
        if record.FeatureTag == "tnum":
            for index in record.Feature.LookupListIndex:
                for table in font["GSUB"].table.LookupList.Lookup[index].SubTable:
                    equal.update(getattr(table, "ExtSubTable", table).mapping)
    for table in font["cmap"].tables:
        for code, glyph in table.cmap.items():
            if 0x30 <= code <= 0x39:
                table.cmap[code] = equal.get(glyph, glyph)     # tables may share one map
    options = subset.Options()
    options.hinting = False
    options.layout_features = []        # no kerning, no alternates: every viewer then sets the widths that the layout measured
    options.drop_tables += ["GSUB", "GPOS", "GDEF", "STAT", "MVAR", "HVAR", "DSIG", "meta", "gasp"]
    options.notdef_outline = True
    options.glyph_names = False
    options.name_IDs = [0, 1, 2, 3, 4, 5, 6, 13, 14]
    options.recalc_timestamp = False
    cutter = subset.Subsetter(options)
    cutter.populate(unicodes=KEPT)
    cutter.subset(font)
    post = f"HeavelineSans-{face}"
    for record in font["name"].names:
        record.string = {
            1: "Heaveline Sans", 2: face, 3: f"{post};1", 4: f"Heaveline Sans {face}", 6: post,
        }.get(record.nameID, str(record))
    font["OS/2"].usWeightClass = 700 if face == "Bold" else 400
    selection = font["OS/2"].fsSelection & ~0b1100001
    font["OS/2"].fsSelection = selection | {"Regular": 0x40, "Bold": 0x20, "Italic": 0x01}[face]
    font["head"].macStyle = {"Regular": 0, "Bold": 1, "Italic": 2}[face]
    font.save(f"{post}.ttf", reorderTables=True)
