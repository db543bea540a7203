"""The list of all pictures: a drawing function puts itself on it by @picture."""

from svg import Sheet

pictures = []  # (file name, width, height in pixels, drawing function of a Sheet)


def picture(name, width, height):
    def put(draw):
        pictures.append((name, width, height, draw))
        return draw
    return put


def drawn(entry):
    name, width, height, draw = entry
    sheet = Sheet(name, width, height)
    draw(sheet)
    return sheet.written()
