"""Printed matter: tickets, diplomas, maps, sleeves and sheets of music."""

import math

from album import picture
from land import hills, ridge, sky, sun, water
from svg import mix, smooth


def crest(sheet, x, y, r, field, charge, metal="#c9a24a"):
    """A shield with a tree on a bar of water, under three stars."""
    d = f"M{x - r:.1f} {y - r:.1f}H{x + r:.1f}V{y:.1f}Q{x + r:.1f} {y + r * 0.9:.1f} {x:.1f} {y + r * 1.3:.1f}Q{x - r:.1f} {y + r * 0.9:.1f} {x - r:.1f} {y:.1f}Z"
    sheet.path(d, sheet.gradient(mix(field, "#ffffff", 0.12), field), stroke=metal, stroke_width=f"{r * 0.09:.1f}")
    sheet.rect(x - r * 0.07, y - r * 0.1, r * 0.14, r * 0.7, charge)
    for dx, dy, s in ((-0.3, -0.12, 0.3), (0.3, -0.12, 0.3), (0, -0.4, 0.36), (0, -0.05, 0.3)):
        sheet.circle(x + dx * r, y + dy * r, s * r, charge)
    for i in range(3):
        sheet.line(f"M{x - r * 0.6:.1f} {y + r * (0.6 + i * 0.14):.1f}q{r * 0.15:.1f} {-r * 0.12:.1f} {r * 0.3:.1f} 0t{r * 0.3:.1f} 0t{r * 0.3:.1f} 0t{r * 0.3:.1f} 0", metal, r * 0.05)


def ticket(name, title, where, seat, day, paper_colour, ink):
    def draw(sheet):
        sheet.all(sheet.gradient(mix(paper_colour, "#ffffff", 0.25), paper_colour, x=1, y=1))
        for i in range(-2, 24):
            sheet.line(f"M{i * 20} 160l80 -160", mix(paper_colour, ink, 0.12), 5)
        sheet.rect(8, 8, 384, 144, "none", stroke=ink, stroke_width=2)
        sheet.rect(13, 13, 374, 134, "none", stroke=ink, stroke_width=0.8)
        sheet.line("M306 8V152", ink, 1.6, stroke_dasharray="1 5")
        sheet.text(160, 54, title, 27, ink, font_weight="bold")
        sheet.text(160, 82, where, 14, ink, "Lato")
        sheet.line("M60 94H260", ink, 1)
        sheet.text(160, 116, day, 15, ink, "Lato")
        sheet.text(160, 136, "ADMIT ONE", 11, ink, "Lato", letter_spacing=4)
        sheet.text(346, 62, "SEAT", 11, ink, "Lato", letter_spacing=3)
        sheet.text(346, 96, seat, 26, ink, font_weight="bold")
    picture(f"ticket-{name}.png", 400, 160)(draw)


ticket("home", "Quarry Rovers", "Tanner's Field, Sorrel Quay", "C 14", "12 April, 3 o'clock", "#f0d9a0", "#7a2a2a")
ticket("away", "Cup, third round", "Mill Lane Ground, Ossery", "F 31", "26 April, 7 o'clock", "#c9dbe2", "#27405e")
ticket("final", "The Final", "Old Harbour Park", "A 7", "17 May, 4 o'clock", "#e3d0cc", "#6b2238")


@picture("diploma.png", 660, 510)
def diploma(sheet):
    sheet.all("#fbf6e6")
    for inset, width, colour in ((18, 7, "#27456b"), (29, 1.2, "#b58f3c"), (36, 1.2, "#b58f3c")):
        sheet.rect(inset, inset, 660 - 2 * inset, 510 - 2 * inset, "none", stroke=colour, stroke_width=width)
    for x in (36, 624):
        for y in (36, 474):
            for r in (17, 11, 5):
                sheet.circle(x, y, r, "#fbf6e6" if r != 11 else "#e9dcb4", stroke="#b58f3c", stroke_width=1.2)
    crest(sheet, 330, 96, 30, "#27456b", "#f0e6c8")
    sheet.text(330, 178, "Ropewalk School of Boatbuilding", 27, "#27456b")
    sheet.text(330, 214, "makes known that", 15, "#5a5140", font_style="italic")
    sheet.text(330, 262, "Wilhelmina Tarn", 36, "#1f1c18", font_style="italic")
    sheet.line("M170 276H490", "#b58f3c", 0.8)
    sheet.text(330, 306, "has built a clinker dinghy from keel to rail", 15, "#5a5140", font_style="italic")
    sheet.text(330, 330, "and is from this day a", 15, "#5a5140", font_style="italic")
    sheet.text(330, 368, "Journeyman Boatbuilder", 24, "#27456b")
    for x in (165, 495):
        sheet.line(f"M{x - 75} 438H{x + 75}", "#5a5140", 0.8)
        sheet.line(f"M{x - 50} 430q12 -24 22 -4t20 -10t24 6t26 -8", "#25304a", 1.6)
    sheet.circle(330, 424, 32, "#a8322c")
    for i in range(24):
        a = i * math.pi / 12
        sheet.circle(330 + 32 * math.cos(a), 424 + 32 * math.sin(a), 4.4, "#a8322c")
    sheet.ring(330, 424, 24, "#d9867c", 1.5)
    crest(sheet, 330, 420, 11, "#8c2420", "#d9867c", "#d9867c")


def island(sheet, x, y, rx, ry, land, edge, count=16):
    line = []
    for i in range(count):
        a, far = i * 2 * math.pi / count, sheet.chance.uniform(0.72, 1.15)
        line.append((x + math.cos(a) * rx * far, y + math.sin(a) * ry * far))
    d = smooth(line, closed=True)
    for width, share in ((22, 0.12), (13, 0.22), (5, 0.4)):
        sheet.path(d, "none", stroke=mix("#cfe0dc", edge, share), stroke_width=width, stroke_linejoin="round")
    sheet.path(d, land, stroke=edge, stroke_width=1.4)


@picture("islands.jpg", 640, 800)
def islands(sheet):
    sheet.all("#dbe7e0")
    for i in range(1, 8):
        sheet.line(f"M{i * 80} 30V770M30 {i * 100}H610", "#a9c3c0", 0.7)
    for a in range(0, 360, 30):
        x, y = 480 + 700 * math.cos(math.radians(a)), 620 + 700 * math.sin(math.radians(a))
        sheet.line(f"M480 620L{x:.0f} {y:.0f}", "#b9ccc2", 0.6)
    for x, y, rx, ry in ((225, 260, 128, 160), (450, 190, 62, 50), (200, 590, 90, 70), (330, 520, 40, 34), (470, 420, 74, 60), (120, 690, 30, 24), (530, 300, 24, 20)):
        island(sheet, x, y, rx, ry, "#f2e4bc", "#7d6a48")
    for _ in range(26):
        x, y = sheet.chance.gauss(222, 42), sheet.chance.uniform(180, 290)
        sheet.line(f"M{x - 9:.0f} {y:.0f}l8 -13 9 13", "#8f7a52", 1.4)
    for _ in range(22):
        x, y = sheet.chance.gauss(200, 30), sheet.chance.gauss(568, 14)
        sheet.circle(x, y, 4.4, "#8fa06a")
    sheet.line(smooth([(300, 390), (282, 350), (292, 310), (270, 250), (280, 190)]), "#6f9aa8", 2.4)
    for x, y, words, size in ((222, 330, "Great Sorrel", 20), (450, 194, "Little Sorrel", 12), (200, 612, "Wether Holm", 13), (472, 424, "Tern Isle", 14), (331, 526, "The Calf", 10)):
        sheet.text(x, y, words, size, "#4a3c26", font_style="italic")
    sheet.line("M296 420C320 470 380 470 440 440", "#a8432f", 1.6, stroke_dasharray="5 4")
    sheet.text(380, 330, "Sound of Quoin", 17, "#4f7c88", font_style="italic", transform="rotate(-24 380 330)")
    for i in range(16):
        a, long = math.radians(i * 22.5), (62 if i % 4 == 0 else 44 if i % 2 == 0 else 30)
        tip = (480 + long * math.sin(a), 620 - long * math.cos(a))
        for side, tone in ((-1, "#4a3c26"), (1, "#c9b684")):
            b = a + side * 0.2
            sheet.polygon([(480, 620), (480 + 13 * math.sin(b), 620 - 13 * math.cos(b)), tip], tone)
    sheet.text(480, 550, "N", 20, "#4a3c26")
    for i in range(6):
        sheet.rect(300 + i * 40, 728, 40, 7, ("#4a3c26", "#f2e4bc")[i % 2], stroke="#4a3c26", stroke_width=0.8)
    sheet.text(420, 752, "leagues", 12, "#4a3c26", font_style="italic")
    sheet.rect(20, 20, 600, 760, "none", stroke="#4a3c26", stroke_width=3)
    sheet.rect(28, 28, 584, 744, "none", stroke="#4a3c26", stroke_width=1)


@picture("islands-title.png", 480, 120)
def islands_title(sheet):
    sheet.all("#f2e8cc")
    sheet.rect(10, 10, 460, 100, "none", stroke="#7d6a48", stroke_width=1.4)
    sheet.text(240, 60, "The Sorrel Isles", 34, "#4a3c26")
    sheet.text(240, 90, "surveyed from the cutter Petrel", 16, "#7d6a48", font_style="italic")


@picture("sleeve.jpg", 440, 440)
def sleeve(sheet):
    sky(sheet, "#23254f", "#6a3f7c", "#e06c5c", "#f9b95c")
    sheet.circle(220, 262, 104, sheet.gradient("#fff1c4", "#f68f5c"))
    for i in range(7):
        sheet.rect(100, 272 + i * 15, 240, 2 + i * 1.5, mix("#d8625c", "#6a3f7c", i / 7))
    hills(sheet, 0.72, 0.94, "#7a3f74", "#1d1c3c", 4, 0.1)
    sheet.text(220, 74, "LOW TIDE LANTERNS", 29, "#fdf0d4", "Lato", letter_spacing=5, font_weight="bold")
    sheet.text(220, 104, "songs for the night ferry", 17, "#f6c9a0", "Lato", letter_spacing=3)
    sheet.texture("#1c1430", 0.16, 0.7)


@picture("disc.jpg", 440, 440)
def disc(sheet):
    sheet.all("#141416")
    for i in range(68):
        r = 218 - i * 2.2
        sheet.ring(220, 220, r, mix("#101012", "#3c3c44", sheet.chance.uniform(0.1, 0.6)), 1.1)
    for a in (28, 208):
        for i in range(14):
            sheet.path("M220 220L438 216A218 218 0 0 1 438 224Z", "#ffffff", opacity=f"{0.012 * (14 - abs(i - 7)):.3f}", transform=f"rotate({a + i * 2.4} 220 220)")
    sheet.circle(220, 220, 70, "#e8743c")
    sheet.circle(220, 220, 70, sheet.gradient("#f6b05a", "#c2453c"), opacity=0.7)
    sheet.ring(220, 220, 64, "#fdf0d4", 1)
    sheet.text(220, 194, "LOW TIDE LANTERNS", 9.5, "#fdf0d4", "Lato", font_weight="bold")
    sheet.text(220, 252, "side one", 11, "#fdf0d4", "Lato", font_style="italic")
    sheet.text(220, 268, "33", 10, "#fdf0d4", "Lato")
    sheet.circle(220, 220, 6, "#f4efe4")


@picture("music.png", 420, 560)
def music(sheet):
    sheet.all("#f8f2e0")
    sheet.text(210, 52, "The Ropemaker's Waltz", 25, "#2c2620", font_style="italic")
    sheet.text(210, 76, "for fiddle and small pipes", 13, "#5a5044", font_style="italic")
    for row in range(7):
        y = 104 + row * 64
        for i in range(5):
            sheet.line(f"M30 {y + i * 7}H390", "#4a443c", 0.7)
        sheet.line(f"M30 {y}v28M150 {y}v28M270 {y}v28M390 {y}v28", "#4a443c", 1)
        sheet.line(f"M44 {y + 36}c10 6 12 -4 8 -16l-6 -24c-2 -10 8 -14 9 -6s-17 18 -17 28 20 12 20 2 -14 -8 -12 0", "#2c2620", 1.5)
        step = 3.5
        for bar in range(3):
            last = None
            for n in range(sheet.chance.choice((3, 4, 6))):
                x = 76 + bar * 112 + n * (92 / 6) + 6 + bar * 6
                ny = y + 28 - step * sheet.chance.randrange(0, 9)
                sheet.ellipse(x, ny, 4.4, 3.3, "#2c2620", transform=f"rotate(-20 {x} {ny})")
                up = -1 if ny > y + 14 else 1
                sx, sy = (x + 4 if up < 0 else x - 4), ny + up * 23
                sheet.line(f"M{sx:.1f} {ny:.1f}V{sy:.1f}", "#2c2620", 1.2)
                if last and n % 2 and last[2] == up:
                    sheet.line(f"M{last[0]:.1f} {last[1]:.1f}L{sx:.1f} {sy:.1f}", "#2c2620", 3)
                last = (sx, sy, up)


@picture("regatta-poster.jpg", 480, 680)
def regatta_poster(sheet):
    sky(sheet, "#f4c95c", "#f6e0a4")
    sun(sheet, 0.72, 0.24, 0.11, "#f08a3c")
    hills(sheet, 0.5, 0.54, "#e0a070", "#a8604c", 2, 0.06)
    water(sheet, 0.54, "#3f8f9c", "#1c4a6c", "#f6e8c0", 60)
    for x, y, s, hull, sail in ((330, 430, 110, "#22304c", "#f9f2dc"), (130, 480, 190, "#a8382c", "#fdf8ea"), (410, 560, 150, "#1c3c54", "#e8743c")):
        sheet.path(f"M{x} {y - s * 1.5}Q{x + s * 0.75} {y - s * 0.7} {x + s * 0.7} {y - s * 0.12}H{x}Z", sail)
        sheet.path(f"M{x - s * 0.04} {y - s * 1.3}Q{x - s * 0.2} {y - s * 0.5} {x - s * 0.5} {y - s * 0.12}H{x - s * 0.04}Z", mix(sail, "#6a4a30", 0.22))
        sheet.path(f"M{x - s * 0.7} {y - s * 0.08}H{x + s * 0.85}Q{x + s * 0.6} {y + s * 0.16} {x + s * 0.45} {y + s * 0.16}H{x - s * 0.4}Z", hull)
        for i in range(5):
            sheet.line(f"M{x - s * 0.6 + i * 9} {y + s * (0.22 + i * 0.05)}h{s * (1.2 - i * 0.2)}", mix(hull, "#3f8f9c", 0.4), 2)
    sheet.rect(0, 586, 480, 94, "#22304c")
    sheet.text(240, 632, "SORREL QUAY REGATTA", 32, "#f6e0a4", "Lato", font_weight="bold", letter_spacing=2)
    sheet.text(240, 662, "the last week of August", 18, "#f6e0a4", "Lato", font_style="italic")
    sheet.texture("#402010", 0.12, 0.6)


@picture("engraving.png", 520, 400)
def engraving(sheet):
    """A house by a river, in the lines of an old plate."""
    ink = "#3a2f26"
    sheet.all("#f3ead2")
    sheet.rect(26, 22, 468, 330, "#ece0c2", stroke=ink, stroke_width=1.2)
    for i in range(34):
        y = 26 + i * 4.2
        sheet.line(smooth([(30, y), (150, y + sheet.chance.uniform(-2, 2)), (300, y + 1), (490, y + sheet.chance.uniform(-2, 2))]), ink, 0.75 - i * 0.018)
    for x, y, r in ((130, 80, 38), (180, 92, 26), (350, 66, 30)):
        sheet.ellipse(x, y, r * 1.6, r * 0.5, "#ece0c2")
    hill = [(26, 210)] + [(x, y - 8) for x, y in ridge(sheet, 210, 26) if 26 < x < 494] + [(494, 214)]
    sheet.path(smooth(hill) + "L494 350L26 350Z", "#e0d2ae", stroke=ink, stroke_width=1)
    for i in range(90):
        x = 30 + i * 5.1
        sheet.line(f"M{x:.0f} {212 + sheet.chance.uniform(0, 16):.0f}l-5 14", ink, 0.6)
    sheet.rect(170, 150, 180, 112, "#f3ead2", stroke=ink, stroke_width=1.4)
    sheet.polygon([(158, 152), (196, 100), (324, 100), (362, 152)], "#a8967a", stroke=ink, stroke_width=1.2)
    for i in range(26):
        sheet.line(f"M{164 + i * 7.6:.0f} 150l{(13 - i) * 1.5:.1f} -46", ink, 0.6)
    for x in (206, 290):
        sheet.rect(x, 76, 22, 30, "#c2b08c", stroke=ink, stroke_width=1)
    for col in range(5):
        for row in range(2):
            sheet.rect(182 + col * 34, 166 + row * 48, 18, 30, "#5a4c3c" if (col, row) != (2, 1) else "#3a2f26", stroke=ink, stroke_width=1)
    for i in range(24):
        sheet.line(f"M{308 + i * 1.8:.1f} 152v108", ink, 0.4)
    for i in range(24):
        y = 264 + i * 3.6
        sheet.line(f"M{30 + sheet.chance.uniform(0, 60):.0f} {y:.0f}H{490 - sheet.chance.uniform(0, 60):.0f}", ink, 0.4 + i * 0.03, stroke_dasharray=f"{40 + i * 4} 7")
    for cx, cy, r in ((90, 170, 50), (430, 176, 44), (60, 220, 30), (462, 222, 28)):
        sheet.line(f"M{cx} {cy}v{r * 1.6:.0f}", ink, 4)
        for _ in range(160):
            a, far = sheet.chance.uniform(0, 6.28), sheet.chance.random() ** 0.5
            x, y = cx + math.cos(a) * r * far, cy + math.sin(a) * r * far
            sheet.line(f"M{x:.0f} {y:.0f}q3 -5 6 0t5 1", ink, 0.5 + 0.7 * (a < 3.1))
    sheet.text(260, 378, "Quoin House from the Weir", 17, ink, font_style="italic")
