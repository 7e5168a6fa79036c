using System.Globalization;
using System.Text;
using Graspwright.Signals.Recordings;

namespace Graspwright.Signals.Tests.Recordings;

/// <summary>A board with a clock of its own, a line that delivers in pieces some milliseconds late: times that a reader can trust.</summary>
public sealed class SampleClockTests
{
    private const double Board = 1987.3, Stated = 2000;

    [Fact]
    public void The_times_rise_evenly_at_the_boards_own_rate_however_raggedly_the_pieces_come()
    {
        (List<double> times, SampleClock clock) = Heard(60, _ => true);
        Assert.All(Enumerable.Range(1, times.Count - 1), i => Assert.InRange(times[i] - times[i - 1], 0.94 / Board, 1.06 / Board));
        Assert.Equal(Board, clock.MeasuredHertz, 1e-3 * Board);
        Assert.Equal((times.Count - 1) / Board, times[^1], 0.02);
        Assert.Equal(0.004 / Math.Sqrt(12), clock.JitterSeconds, 0.0006); // made even within 4 ms
        Assert.Equal(0, clock.Pauses);
    }

    [Fact]
    public void Lost_samples_leave_their_gap_when_it_is_read_again()
    {
        (List<double> times, _) = Heard(20, i => i is < 9000 or >= 9040);
        Recording back = Reread(times);
        Assert.Equal([new Gap(9000, 40)], back.Gaps);
        Assert.Equal(Board, back.RateHertz, 1e-3 * Board);
    }

    [Fact]
    public void A_silence_of_the_board_is_a_jump_of_the_times()
    {
        (List<double> times, SampleClock clock) = Heard(20, _ => true, silentFrom: 10, silent: 4);
        Assert.Equal(1, clock.Pauses);
        Gap gap = Assert.Single(Reread(times).Gaps);
        Assert.Equal(4 * Board, gap.Count, 0.01 * Board);
        Assert.Equal(10 * Board, gap.Start, 0.02 * Board);
    }

    [Fact]
    public void What_is_piped_from_a_file_has_the_stated_rate()
    {
        SampleClock clock = new(Stated);
        for (int i = 0; i < 100; i++)
        {
            clock.Piece(1000 * i + 999, 0.01 * i);
        }

        Assert.Equal([0, 1 / Stated, 5 / Stated], new long[] { 7, 8, 12 }.Select(clock.Time).Select(t => Math.Round(t, 12)));
        Assert.True(double.IsNaN(clock.MeasuredHertz) && double.IsNaN(clock.JitterSeconds));
    }

    /// <summary>Pieces of 1 to 30 samples, each arriving 1 to 5 ms after its last one.</summary>
    private static (List<double> Times, SampleClock Clock) Heard(double seconds, Func<long, bool> came, double silentFrom = double.PositiveInfinity, double silent = 0)
    {
        Signals.Made.Chance chance = new(5);
        SampleClock clock = new(Stated);
        List<double> times = [];
        List<long> held = [];
        double last = 0;
        for (long i = 0; i < seconds * Board;)
        {
            long end = i + 1 + (long)(30 * chance.Even());
            held.AddRange(Enumerable.Range(0, (int)(end - i)).Select(k => i + k).Where(came));
            double taken = (end - 1) / Board, arrival = taken + (taken >= silentFrom ? silent : 0) + 0.001 + 0.004 * chance.Even();
            last = Math.Max(last, arrival);
            clock.Piece(held.Count > 0 ? held[^1] : end - 1, last);
            if (taken > 1)
            {
                times.AddRange(held.Select(clock.Time));
                held.Clear();
            }

            i = end;
        }

        return (times, clock);
    }

    private static Recording Reread(List<double> times)
    {
        StringBuilder text = new("time_s,a\n");
        for (int i = 0; i < times.Count; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"{times[i]:F6},{i % 7}\n");
        }

        TableReader reader = new(new());
        reader.Feed(Encoding.UTF8.GetBytes(text.ToString()));
        return reader.Finish();
    }
}
