using System.CommandLine;
using Graspwright.Drawing.Svg;
using Graspwright.Workshop.Results;
using Graspwright.Workshop.Thumb;
using Graspwright.Workshop.Views;

namespace Graspwright.Cli.Verbs;

/// <summary><c>thumb HAND</c>: which fingertips does the wearer's own thumb meet, and how hard do they press on it?</summary>
internal sealed class ThumbVerb() : HandVerb("thumb", "Which fingertips the wearer's own thumb meets: gaps, angles, pressure on its pad.")
{
    private readonly Option<string?> _csv = new("--csv") { Description = "Write the table of reach.", HelpName = "FILE" };
    private readonly Option<string?> _svg = new("--svg") { Description = "Write a picture of each posture of the thumb.", HelpName = "FOLDER" };

    /// <inheritdoc/>
    protected override IReadOnlyList<Option> Options => [_csv, _svg, CountJobs];

    /// <inheritdoc/>
    protected override Reply Answer(HandCall call)
    {
        (Answer? made, IReadOnlyList<InputError> errors) = Thumbing.Answer(call.Hand, call.Path);
        Answer answer = Sound(made, errors);
        call.Csv(_csv, () => answer.Tables[0]);
        call.Write(_svg, folder =>
        {
            PictureFolder.Make(folder);
            foreach (ThumbMeeting meeting in Thumbing.Meetings(call.Hand))
            {
                string stem = "thumb-" + PictureFolder.Stem(meeting.Posture.Name);
                WholeFile.Write(Path.Combine(folder, stem + ".svg"), SvgWriter.Write(ThumbView.Draw(call.Hand, meeting), stem), _svg.Name);
            }
        });
        return Reply.Of(WithJobs(answer, call.Parsed, call.Hand, call.Path));
    }
}
