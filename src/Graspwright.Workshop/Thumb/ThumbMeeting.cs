using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Holding;
using Graspwright.Mechanics.Run;

namespace Graspwright.Workshop.Thumb;

/// <summary>A posture of the thumb and the fingertips that come to it.</summary>
/// <param name="Posture">The posture.</param>
/// <param name="Drive">The drive.</param>
/// <param name="Run">The closing run on nothing.</param>
/// <param name="Tips">The nearest of every fingertip.</param>
public sealed record ThumbMeeting(Hand.ThumbPosture Posture, DriveModel Drive, RunResult Run, IReadOnlyList<FingertipOnThumb> Tips);
