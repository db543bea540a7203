"""Pressed plants, botanical plates and moths."""

import math

from album import picture
from svg import mix, smooth
from trees import bloom, leaf, stem


def herbarium(name, latin, where, plant):
    def draw(sheet):
        sheet.all("#f4ecd6")
        sheet.texture("#8a6c3c", 0.14, 0.5)
        plant(sheet)
        sheet.rect(170, 420, 128, 58, "#faf5e6", stroke="#9a8a6a", stroke_width=0.8)
        sheet.text(234, 437, "HERBARIUM OF ALMA FENWRIGHT", 6.4, "#5a4c38", "Lato")
        sheet.text(234, 454, latin, 12, "#2c2620", font_style="italic")
        sheet.text(234, 469, where, 8, "#5a4c38", "Lato")
        for x, y, a in ((120, 380, 10), (150, 250, -14), (140, 130, 8)):
            sheet.rect(x - 24, y - 3, 52, 6, "#fdfaf0", stroke="#cfc2a4", stroke_width=0.5, transform=f"rotate({a} {x} {y})")
    picture(f"herbarium-{name}.jpg", 320, 490)(draw)


def fern(sheet):
    at = stem(sheet, 130, 450, 390, 40, "#5f5a34", 2.4)
    for i in range(26):
        t = 0.14 + i * 0.033
        x, y, a = at(t)
        size = 78 * math.sin(min(1, (1 - t) * 1.25 + 0.08) * 1.5)
        for side in (1, -1):
            turn = a + side * 62
            ux, uy = math.cos(math.radians(turn)), -math.sin(math.radians(turn))
            sheet.line(f"M{x:.1f} {y:.1f}l{ux * size:.1f} {uy * size:.1f}", "#66703c", 0.9)
            for k in range(9):
                s = (k + 1) / 10
                for flip in (1, -1):
                    leaf(sheet, x + ux * size * s, y + uy * size * s, size * 0.2 * (1.1 - s), turn + flip * 55, 2.6, mix("#7d8548", "#5c6a38", sheet.chance.random()))


def campion(sheet):
    for bend, tall, base in ((-66, 330, 140), (34, 390, 150), (110, 280, 156)):
        at = stem(sheet, base, 450, tall, bend, "#6a7040", 2)
        for t in (0.2, 0.4, 0.58, 0.74):
            x, y, a = at(t)
            for side in (1, -1):
                leaf(sheet, x, y, 62 * (1.1 - t), a + side * 40, 13, "#7c8650", "#5f6a3a")
        x, y, a = at(1)
        sheet.ellipse(x, y + 8, 8, 13, "#8a7a58")
        bloom(sheet, x, y - 4, 26, 5, "#b05a80", "#d8c48a", a - 54, 0.46)
    for dx, dy in ((60, 300), (245, 260)):
        bloom(sheet, dx, dy, 17, 5, "#bf6f90", "#d8c48a", 20, 0.46)


def poppy(sheet):
    for bend, tall in ((-50, 340), (60, 300)):
        at = stem(sheet, 152, 455, tall, bend, "#70703e", 1.8)
        x, y, a = at(1)
        for i, (dx, dy) in enumerate(((-20, 4), (20, 4), (0, -16), (0, 12))):
            sheet.ellipse(x + dx, y + dy, 30, 24, mix("#b8402c", "#d8704c", i / 4), opacity=0.85)
        sheet.circle(x, y, 9, "#4a3c2c")
        for i in range(22):
            angle = i * 0.286
            sheet.line(f"M{x:.1f} {y:.1f}l{math.cos(angle) * 17:.1f} {math.sin(angle) * 17:.1f}", "#3a2c20", 0.9)
    for i in range(7):
        x, y = 152 - 8 * (i % 2), 450 - i * 26
        side = 1 if i % 2 else -1
        for k in range(5):
            leaf(sheet, x + side * k * 16, y - k * 12, 30, 90 - side * (20 + 18 * k), 7, "#818a52", "#667040")
        sheet.line(f"M{x} {y}l{side * 66} -50", "#70703e", 1.4)


herbarium("fern", "Filix umbrosa", "Gannet Wood, 9 July", fern)
herbarium("campion", "Lychnis quoinensis", "Ropewalk verge, 2 June", campion)
herbarium("poppy", "Papaver litorale", "Tern Isle, 21 June", poppy)


def plate(name, title, ground, plant):
    def draw(sheet):
        sheet.all(ground)
        sheet.rect(14, 14, 332, 472, "none", stroke="#5c5040", stroke_width=0.9)
        plant(sheet)
        sheet.text(180, 470, title, 17, "#3c3228", font_style="italic")
        sheet.texture("#7a5c30", 0.1, 0.4)
    picture(f"plate-{name}.jpg", 360, 500)(draw)


def lemon(sheet):
    sheet.line(smooth([(60, 60), (140, 110), (210, 210), (230, 330)]), "#6a5434", 5)
    for x, y, a in ((80, 74, -70), (118, 96, 40), (150, 124, -50), (178, 156, 20), (200, 196, -10), (214, 232, 205), (224, 276, -20), (110, 92, 250), (170, 146, 230)):
        leaf(sheet, x, y, 92, a, 26, sheet.gradient("#7fa452", "#3f6a36", x=1, y=1), "#bcd08c")
    for x, y, turn in ((150, 262, 20), (236, 372, -8), (96, 196, 34)):
        sheet.begin(transform=f"rotate({turn} {x} {y})")
        sheet.path(f"M{x} {y - 62}C{x + 12} {y - 52} {x + 44} {y - 44} {x + 44} {y}C{x + 44} {y + 40} {x + 14} {y + 46} {x} {y + 62}C{x - 14} {y + 46} {x - 44} {y + 40} {x - 44} {y}C{x - 44} {y - 44} {x - 12} {y - 52} {x} {y - 62}Z",
                   sheet.gradient("#fbe36c", "#f2c12e", "#d89a1c", x=1, y=0.6))
        for _ in range(46):
            sheet.circle(x + sheet.chance.gauss(0, 17), y + sheet.chance.gauss(0, 22), 1, "#c98c1a", opacity=0.5)
        sheet.ellipse(x - 16, y - 18, 9, 16, "#fff6b8", opacity=0.55)
        sheet.end()
    for x, y in ((256, 150), (284, 212)):
        bloom(sheet, x, y, 27, 5, "#fdf8ee", "#f0c33c", 12, 0.36)


def fig(sheet):
    sheet.line(smooth([(300, 56), (236, 140), (190, 260), (150, 400)]), "#7a6a54", 6)
    for x, y, a, size in ((276, 88, 160, 1), (232, 150, 10, 1.1), (206, 214, 190, 1.2), (180, 300, -10, 1.1), (160, 370, 200, 0.8)):
        for lobe in (-52, -26, 0, 26, 52):
            leaf(sheet, x, y, (112 - abs(lobe) * 0.7) * size, a + lobe, 24 * size, sheet.gradient("#86a264", "#4a6e42", x=1, y=1), "#c4d4a0")
    for x, y, turn in ((226, 262, -24), (130, 330, 30), (208, 392, -14)):
        sheet.begin(transform=f"rotate({turn} {x} {y})")
        sheet.path(f"M{x} {y - 58}C{x + 8} {y - 34} {x + 40} {y - 16} {x + 40} {y + 16}A40 36 0 0 1 {x - 40} {y + 16}C{x - 40} {y - 16} {x - 8} {y - 34} {x} {y - 58}Z",
                   sheet.gradient("#7c6a8c", "#4a2f54", "#2c1c38", x=1, y=0.5))
        for i in range(-3, 4):
            sheet.line(f"M{x} {y - 50}Q{x + i * 15} {y - 10} {x + i * 10} {y + 46}", "#a890b0", 0.8, opacity=0.5)
        sheet.end()


plate("lemon", "Citrus, in fruit and flower", "#f6f0de", lemon)
plate("fig", "Ficus, the August crop", "#f4eee0", fig)


def moth(name, wing, band, body):
    def draw(sheet):
        sheet.all("#f2ede0")
        sheet.texture("#8a7c5c", 0.12, 0.6)
        sheet.ellipse(200, 170, 130, 60, sheet.glow("#000000"), opacity=0.16)
        for side in (1, -1):
            sheet.begin(transform=f"translate(200 0) scale({side} 1)")
            sheet.path("M6 140C60 70 130 54 168 66C176 110 140 160 70 168C40 172 14 164 6 150Z", sheet.gradient(mix(wing, "#ffffff", 0.2), wing, mix(wing, "#201008", 0.3), x=1, y=0.4))
            sheet.path("M6 152C50 160 104 176 112 210C100 240 50 244 26 214C12 196 6 176 6 152Z", sheet.gradient(mix(wing, band, 0.4), mix(wing, "#201008", 0.2)))
            sheet.path("M150 62C140 100 110 140 62 166L72 168C122 150 152 108 162 65Z", band)
            sheet.path("M104 196C92 222 54 230 30 214L34 220C60 238 98 230 110 204Z", band)
            for x, y, r in ((100, 106, 11), (66, 196, 9)):
                sheet.circle(x, y, r, band)
                sheet.circle(x, y, r * 0.6, mix(body, "#000000", 0.4))
                sheet.circle(x - r * 0.2, y - r * 0.2, r * 0.2, "#ffffff")
            sheet.line("M4 124Q14 84 40 66", body, 2.4)
            for i in range(7):
                x, y = 6 + i * 5, 112 - i * 7
                sheet.line(f"M{x} {y}l7 2M{x} {y}l-1 -8", body, 0.8)
            sheet.end()
        sheet.ellipse(200, 172, 9, 46, sheet.gradient(mix(body, "#ffffff", 0.3), body))
        for i in range(6):
            sheet.line(f"M192 {172 + i * 7}h16", mix(body, "#000000", 0.4), 1)
        sheet.ellipse(200, 136, 11, 15, mix(body, "#ffffff", 0.12))
        sheet.text(200, 286, name.capitalize(), 15, "#5a4c38", font_style="italic")
    picture(f"moth-{name}.jpg", 400, 300)(draw)


moth("russet", "#b06a3c", "#f0d8a0", "#5a3420")
moth("lichen", "#7f9470", "#e8ecd0", "#4c5540")
moth("dusk", "#6c5f88", "#e0b8c0", "#3c3450")
moth("ivory", "#d8c49c", "#8a5a40", "#7a6448")


@picture("orchard-pear.jpg", 420, 520)
def pear(sheet):
    sheet.all(sheet.gradient("#dfe6d2", "#b8c6a4"))
    for i in range(16):
        x = sheet.chance.uniform(0, 420)
        leaf(sheet, x, sheet.chance.uniform(0, 520), sheet.chance.uniform(60, 120), sheet.chance.uniform(0, 360), 20, mix("#8fa676", "#a8bb90", sheet.chance.random()))
    body = "M214 90C250 92 256 150 270 200C286 250 340 290 336 370C332 450 270 486 210 486C150 486 88 450 84 370C80 290 134 250 150 200C164 150 178 88 214 90Z"
    sheet.path(body, sheet.gradient("#e9d869", "#c9c04c", "#7f9438", x=0.8, y=0.6))
    sheet.ellipse(290, 380, 46, 90, sheet.glow("#c8542c"), opacity=0.7)
    for _ in range(240):
        x, y = sheet.chance.gauss(205, 60), sheet.chance.gauss(370, 60)
        if (x - 210) ** 2 / 120 ** 2 + (y - 370) ** 2 / 108 ** 2 < 0.9:
            sheet.circle(x, y, sheet.chance.uniform(0.6, 1.6), "#8a6a2c", opacity=0.5)
    sheet.ellipse(152, 330, 20, 56, "#fffbd0", opacity=0.4, transform="rotate(14 152 330)")
    sheet.line("M214 92Q206 56 228 26", "#5a4028", 8)
    leaf(sheet, 220, 60, 130, 22, 34, sheet.gradient("#8fb05c", "#4c7238", x=1, y=1), "#d0dca4")
    sheet.texture("#4a4020", 0.1, 0.5)
