"""One tree through the year: a small square photograph for each month, and the house behind it."""

from album import picture
import land
import trees

MONTHS = (  # name, sky above and below, ground, leaves dark and light or none, what falls or stands
    ("january", "#9fb0c0", "#dfe6ea", "#f1f4f5", None, "snow"),
    ("february", "#8d9db0", "#ccd6de", "#e4e9ea", None, "snow"),
    ("march", "#9db9d0", "#dbe7ee", "#9aa06a", None, None),
    ("april", "#8fbfe0", "#dff0f6", "#8db255", ("#8fae4a", "#d5e59a"), "flowers"),
    ("may", "#79b4e2", "#dcf0f8", "#78ab45", ("#4f8f35", "#b4d873"), "flowers"),
    ("june", "#6aaae0", "#d8eefa", "#6c9f3e", ("#336f2c", "#8fc35a"), "flowers"),
    ("july", "#5c9fdc", "#e4f1f4", "#8f9d42", ("#2c6428", "#79b04c"), None),
    ("august", "#6ca5d6", "#f3ead0", "#b79f4a", ("#3d6a28", "#93ab47"), None),
    ("september", "#84a9c8", "#f2e2c0", "#a89148", ("#84782a", "#d9b548"), None),
    ("october", "#9aa9b8", "#eed9b4", "#937a3e", ("#9c4a1e", "#eb9c34"), "leaves"),
    ("november", "#8b939e", "#d3d0c8", "#7d6c48", None, "leaves"),
    ("december", "#566380", "#c7c6d2", "#e7ecf1", None, "snow"),
)


def month(upper, lower, ground, leaves, extra):
    def draw(sheet):
        w, h = sheet.w, sheet.h
        sheet.all(sheet.gradient(upper, lower))
        sheet.ellipse(w * 0.5, h * 1.08, w * 0.95, h * 0.3, ground)
        if leaves:
            trees.broad(sheet, w * 0.5, h * 0.86, h * 0.74, leaves)
        else:
            trees.bare(sheet, w * 0.5, h * 0.86, h * 0.2, 1.5708, h * 0.03, "#54453a", 6)
        if extra == "flowers":
            land.flowers(sheet, 0.86, ("#ffffff", "#f6d34a", "#d7647e"), 50, 0.012)
        for _ in range({"snow": 60, "leaves": 26}.get(extra, 0)):
            x, y = sheet.chance.uniform(0, w), sheet.chance.uniform(0.05 * h, h)
            sheet.circle(x, y, w * (0.008 if extra == "snow" else 0.012), "#ffffff" if extra == "snow" else "#d98a2b")
        sheet.vignette(0.18)
        sheet.texture("#403830", 0.08)
    return draw


for name, *look in MONTHS:
    picture(f"linden-{name}.jpg", 220, 220)(month(*look))


@picture("linden-house.jpg", 420, 420)
def linden_house(sheet):
    w, h = sheet.w, sheet.h
    sheet.all(sheet.gradient("#6aaae0", "#e6f2f6"))
    sheet.ellipse(w * 0.5, h * 1.1, w, h * 0.36, "#739a48")
    land.house(sheet, w * 0.3, h * 0.84, w * 0.4, "#e9dfc8", "#8a4b3a")
    trees.broad(sheet, w * 0.78, h * 0.88, h * 0.62, ("#336f2c", "#8fc35a"))
    sheet.vignette(0.2)
    sheet.texture("#403830", 0.08)
