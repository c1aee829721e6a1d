"""Opens a timeline with the reference library and tells what it found, as JSON; exit status 3 where the library is absent."""

import json
import sys

try:
    import opentimelineio as otio
except ImportError:
    sys.exit(3)

timeline = otio.adapters.read_from_file(sys.argv[1])


def numbered(media):
    if not isinstance(media, otio.schema.ImageSequenceReference):
        return None
    count = media.number_of_images_in_sequence()
    return {
        "first": media.target_url_for_image_number(0),
        "last": media.target_url_for_image_number(count - 1),
        "count": count,
    }


def told(clip):
    media = clip.media_reference
    return {
        "name": clip.name,
        "start": clip.range_in_parent().start_time.to_seconds(),
        "seconds": clip.duration().to_seconds(),
        "media": getattr(media, "target_url", getattr(media, "target_url_base", None)),
        "pictures": numbered(media),
        "missing": media.is_missing_reference,
        "markers": [
            {
                "name": marker.name,
                "colour": marker.color,
                "start": marker.marked_range.start_time.to_seconds(),
                "seconds": marker.marked_range.duration.to_seconds(),
                "comment": marker.comment,
            }
            for marker in clip.markers
        ],
    }


print(
    json.dumps(
        {
            "name": timeline.name,
            "seconds": timeline.duration().to_seconds(),
            "tracks": [
                {"name": track.name, "kind": track.kind, "clips": [told(clip) for clip in track if isinstance(clip, otio.schema.Clip)]}
                for track in timeline.tracks
            ],
        }
    )
)
