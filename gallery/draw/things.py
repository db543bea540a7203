"""Things that lie in a box frame: a jersey, a medal, flags."""

import math

from album import picture
from paper import crest


@picture("jersey.jpg", 520, 600)
def jersey(sheet):
    sheet.all("#ece6d8")
    shade = sheet.blur(7)
    body = "M150 70C190 96 330 96 370 70L446 104L512 236L432 270L404 222V566H116V222L88 270L8 236L74 104Z"
    sheet.path(body, "#000000", opacity=0.28, filter=shade, transform="translate(5 8)")
    cut = sheet.define(f'<clipPath id="{{id}}"><path d="{body}"/></clipPath>')
    sheet.begin(clip_path=cut)
    sheet.all(sheet.gradient("#b8322e", "#8f201f"))
    for x in (150, 250, 350):
        sheet.rect(x - 5, 60, 30, 520, "#f6e6c4")
    sheet.rect(0, 214, 104, 24, "#f6e6c4", transform="rotate(22 60 230)")
    sheet.rect(420, 214, 104, 24, "#f6e6c4", transform="rotate(-22 460 230)")
    for x, bend, dark in ((180, 30, 1), (300, -40, 1), (390, 24, 1), (140, 16, 0), (336, -18, 0)):
        sheet.line(f"M{x} 120Q{x + bend} 340 {x - bend} 560", "#000000" if dark else "#ffffff", 16, opacity=0.1, filter=shade)
    sheet.end()
    sheet.path("M150 70C190 96 330 96 370 70C348 142 172 142 150 70Z", "#5c1414")
    sheet.line("M150 70C172 142 348 142 370 70", "#f6e6c4", 9)
    crest(sheet, 332, 214, 30, "#27405e", "#f0e6c8")
    sheet.text(260, 440, "9", 210, "#fdf6e4", "Lato", font_weight="bold", stroke="#5c1414", stroke_width=5)
    sheet.texture("#401010", 0.12, 0.9)


@picture("medal.jpg", 240, 240)
def medal(sheet):
    sheet.all("#e8e2d4")
    sheet.circle(123, 126, 96, "#000000", opacity=0.25, filter=sheet.blur(5))
    sheet.circle(120, 120, 96, sheet.gradient("#f6dc94", "#c8963c", "#8c6420", x=1, y=1))
    sheet.ring(120, 120, 86, "#8c6420", 2)
    sheet.ring(120, 120, 62, "#8c6420", 1.4)
    for i in range(40):
        a = i * math.pi / 20
        sheet.circle(120 + 74 * math.cos(a), 120 + 74 * math.sin(a), 4, "#a87c30")
    for s, e in ((1, 0), (-1, 0)):
        sheet.line(f"M120 168C{120 + s * 44} 160 {120 + s * 52} 110 {120 + s * 36} 82", "#8c6420", 3)
        for i in range(6):
            a = 0.3 + i * 0.36
            x, y = 120 + s * 44 * math.sin(a), 122 + 46 * math.cos(a)
            sheet.ellipse(x + s * 5, y, 9, 4, "#fbe8b0", transform=f"rotate({-s * (60 - i * 22)} {x} {y})")
    sheet.text(120, 134, "I", 44, "#6c4a14", font_weight="bold")


@picture("citation.png", 420, 540)
def citation(sheet):
    sheet.all("#fbf8f0")
    sheet.rect(18, 18, 384, 504, "none", stroke="#6b2238", stroke_width=2)
    crest(sheet, 210, 92, 34, "#6b2238", "#f0e2b4")
    sheet.text(210, 184, "Harbour Rowing Club", 27, "#6b2238")
    sheet.text(210, 222, "The Long Reach", 20, "#3c3228", font_style="italic")
    sheet.text(210, 250, "eleven miles against the ebb", 14, "#6a5c4c", font_style="italic")
    sheet.text(210, 316, "Isidore Penhallow", 31, "#221c18", font_style="italic")
    sheet.line("M80 330H340", "#b58f3c", 0.8)
    sheet.text(210, 362, "first of forty-one boats", 16, "#3c3228")
    sheet.text(210, 390, "1 h 24 min 9 s", 16, "#3c3228")
    sheet.line("M120 460H300", "#6a5c4c", 0.8)
    sheet.line("M150 452q14 -28 26 -6t24 -12t28 8t30 -10", "#25304a", 1.8)
    sheet.text(210, 480, "for the committee", 12, "#6a5c4c", font_style="italic")


def flag(name, pieces):
    """A boat's house flag of wool, laid on linen; pieces are (colour, corners) on 3 x 2."""
    def draw(sheet):
        sheet.all("#e6dcc6")
        sheet.texture("#6a5838", 0.2, 0.08, 9)
        sheet.rect(34, 36, 240, 160, "#000000", opacity=0.3, filter=sheet.blur(4))
        sheet.begin(transform="translate(30 30) scale(80)")
        for colour, corners in pieces:
            sheet.polygon(corners, colour)
        sheet.end()
        for i in range(5):
            sheet.line(f"M{60 + i * 48} 34q{8 - 4 * i} 80 {4 * i - 6} 152", "#000000" if i % 2 else "#ffffff", 12, opacity=0.1, filter=sheet.blur(5))
        sheet.rect(26, 28, 9, 164, "#f4eee0", stroke="#b8aa8c", stroke_width=0.8)
        for y in (40, 180):
            sheet.ring(30.5, y, 3.4, "#9a7a3c", 2)
        sheet.texture("#201808", 0.1, 0.9)
    picture(f"flag-{name}.jpg", 300, 226)(draw)


NAVY, CREAM, RED, GOLD, GREEN = "#22385c", "#f6eed8", "#b0352f", "#e0aa3c", "#2f6650"
ALL = ((0, 0), (3, 0), (3, 2), (0, 2))
flag("petrel", ((NAVY, ALL), (CREAM, ((0, 0), (3, 1), (0, 2))), (RED, ((0, 0.5), (1.5, 1), (0, 1.5)))))
flag("tern", ((CREAM, ALL), (GREEN, ((0, 0), (0.4, 0), (3, 1.73), (3, 2), (2.6, 2), (0, 0.27))), (GREEN, ((3, 0), (2.6, 0), (0, 1.73), (0, 2), (0.4, 2), (3, 0.27))), (GOLD, ((1.5, 0.4), (2.2, 1), (1.5, 1.6), (0.8, 1)))))
flag("gannet", ((RED, ALL), (CREAM, ((0, 0.2), (1.5, 1.1), (3, 0.2), (3, 0.75), (1.5, 1.65), (0, 0.75))), (NAVY, ((0, 1.2), (0, 2), (1.35, 2)))))
flag("heron", ((GREEN, ALL), (GOLD, ((1.5, 0), (3, 0), (3, 1), (1.5, 1))), (GOLD, ((0, 1), (1.5, 1), (1.5, 2), (0, 2))), (CREAM, ((1.5, 0.5), (2.2, 1), (1.5, 1.5), (0.8, 1)))))
