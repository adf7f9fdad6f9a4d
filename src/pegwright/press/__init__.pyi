from .bundle import (
    MEDIA as MEDIA,
    OUTPUTS as OUTPUTS,
    Output as Output,
    bundle_lesson as bundle_lesson,
    lesson_files as lesson_files,
    picture_file as picture_file,
    still_file as still_file,
)
from .film.captions import (
    captions_srt as captions_srt,
    captions_vtt as captions_vtt,
    chapters_text as chapters_text,
    chapters_vtt as chapters_vtt,
)
from .film.codec import (
    Codec as Codec,
    can_encode_films as can_encode_films,
)
from .film.encoder import film_storyboard as film_storyboard
from .film.voice import (
    find_voice as find_voice,
    narrate as narrate,
)
from .page.follow_along import page_html as page_html
from .page.gallery import gallery_html as gallery_html
from .page.prompter import prompter_html as prompter_html
from .page.row_chart import row_chart_html as row_chart_html
from .pdf.typeset import (
    Edition as Edition,
    Paper as Paper,
    handout_pdf as handout_pdf,
    leaf_pdf as leaf_pdf,
)
from .portrait.gltf import portrait_glb as portrait_glb
from .portrait.photo import (
    RendererMissingError as RendererMissingError,
    portrait_photo as portrait_photo,
)
from .portrait.pixels import portrait_png as portrait_png
from .portrait.vectors import portrait_svg as portrait_svg
from .raster.stills import still_png as still_png
from .svg.comparison import (
    HeadedPicture as HeadedPicture,
    comparison_svg as comparison_svg,
)
from .svg.pictures import (
    step_svg as step_svg,
    swatch_svg as swatch_svg,
)

__all__ = [
    "MEDIA",
    "OUTPUTS",
    "Codec",
    "Edition",
    "HeadedPicture",
    "Output",
    "Paper",
    "RendererMissingError",
    "bundle_lesson",
    "can_encode_films",
    "captions_srt",
    "captions_vtt",
    "chapters_text",
    "chapters_vtt",
    "comparison_svg",
    "film_storyboard",
    "find_voice",
    "gallery_html",
    "handout_pdf",
    "leaf_pdf",
    "lesson_files",
    "narrate",
    "page_html",
    "picture_file",
    "portrait_glb",
    "portrait_photo",
    "portrait_png",
    "portrait_svg",
    "prompter_html",
    "row_chart_html",
    "step_svg",
    "still_file",
    "still_png",
    "swatch_svg",
]
