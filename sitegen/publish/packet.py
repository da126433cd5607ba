"""A PDF's document information -> the same in its XMP packet, with the standards that the file follows.

The packet is written whole from the document information, so that the two cannot disagree. It holds no date
but those, and nothing by chance. XMP is ISO 16684-1; PDF/A-2 (ISO 19005-2, 6.6) asks that a property it does
not know, here PDF/UA's mark, be explained in the packet.
"""

from __future__ import annotations

import re
from html import escape

from pikepdf import Dictionary, Name, Pdf

_SPACES = {
    "rdf": "http://www.w3.org/1999/02/22-rdf-syntax-ns#",
    "dc": "http://purl.org/dc/elements/1.1/",
    "xmp": "http://ns.adobe.com/xap/1.0/",
    "pdf": "http://ns.adobe.com/pdf/1.3/",
    "pdfaid": "http://www.aiim.org/pdfa/ns/id/",
    "pdfuaid": "http://www.aiim.org/pdfua/ns/id/",
    "pdfaExtension": "http://www.aiim.org/pdfa/ns/extension/",
    "pdfaSchema": "http://www.aiim.org/pdfa/ns/schema#",
    "pdfaProperty": "http://www.aiim.org/pdfa/ns/property#",
}
_TEXT = '<rdf:Alt><rdf:li xml:lang="x-default">{}</rdf:li></rdf:Alt>'
_SAID = (
    ("/Title", f"<dc:title>{_TEXT}</dc:title>"),
    ("/Author", "<dc:creator><rdf:Seq><rdf:li>{}</rdf:li></rdf:Seq></dc:creator>"),
    ("/Subject", f"<dc:description>{_TEXT}</dc:description>"),
    ("/Keywords", "<pdf:Keywords>{}</pdf:Keywords>"),
    ("/Creator", "<xmp:CreatorTool>{}</xmp:CreatorTool>"),
    ("/Producer", "<pdf:Producer>{}</pdf:Producer>"),
    ("/CreationDate", "<xmp:CreateDate>{}</xmp:CreateDate>"),
    ("/ModDate", "<xmp:ModifyDate>{}</xmp:ModifyDate>"),
)
"""Key of the document information -> the property that says the same."""
_FOLLOWS = """\
<pdfaid:part>2</pdfaid:part>
<pdfaid:conformance>A</pdfaid:conformance>
<pdfuaid:part>1</pdfuaid:part>
<pdfaExtension:schemas><rdf:Bag><rdf:li rdf:parseType="Resource">
<pdfaSchema:schema>PDF/UA identification</pdfaSchema:schema>
<pdfaSchema:namespaceURI>http://www.aiim.org/pdfua/ns/id/</pdfaSchema:namespaceURI>
<pdfaSchema:prefix>pdfuaid</pdfaSchema:prefix>
<pdfaSchema:property><rdf:Seq><rdf:li rdf:parseType="Resource">
<pdfaProperty:name>part</pdfaProperty:name>
<pdfaProperty:valueType>Integer</pdfaProperty:valueType>
<pdfaProperty:category>internal</pdfaProperty:category>
<pdfaProperty:description>The part of ISO 14289 that this file follows</pdfaProperty:description>
</rdf:li></rdf:Seq></pdfaSchema:property>
</rdf:li></rdf:Bag></pdfaExtension:schemas>"""
_PACKET = """\
<?xpacket begin="\N{ZERO WIDTH NO-BREAK SPACE}" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/">
<rdf:RDF {spaces}>
<rdf:Description rdf:about="">
{follows}
{said}
</rdf:Description>
</rdf:RDF>
</x:xmpmeta>
<?xpacket end="r"?>"""
"""The marks round it are those that XMP prescribes."""
_DAY = re.compile(r"D:(\d{4})(\d\d)(\d\d)")


def describe(pdf: Pdf) -> None:
    """Write the XMP packet anew from document information and language, in place."""
    said = [form.format(escape(_told(str(pdf.docinfo[key])))) for key, form in _SAID if key in pdf.docinfo]
    language = escape(str(pdf.Root.Lang))
    said.append(f"<dc:language><rdf:Bag><rdf:li>{language}</rdf:li></rdf:Bag></dc:language>")
    spaces = " ".join(f'xmlns:{prefix}="{address}"' for prefix, address in _SPACES.items())
    packet = _PACKET.format(spaces=spaces, follows=_FOLLOWS, said="\n".join(said))
    pdf.Root.Metadata = pdf.make_stream(packet.encode(), Dictionary(Type=Name.Metadata, Subtype=Name.XML))


def _told(value: str) -> str:
    """A day as XMP writes it; any other text as it is."""
    day = _DAY.fullmatch(value)
    return "-".join(day.groups()) if day else value
