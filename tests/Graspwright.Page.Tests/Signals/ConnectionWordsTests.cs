using Graspwright.Page.Signals;
using Graspwright.Signals.Quality;

namespace Graspwright.Page.Tests.Signals;

public sealed class ConnectionWordsTests
{
    [Fact]
    public void A_channel_that_stayed_connected_says_so() => Assert.Equal("connected from beginning to end.", ConnectionWords.Course(Reading([])));

    [Fact]
    public void A_few_stretches_are_told_in_order_with_their_times() => Assert.Equal(
        "shaken from 0:04 for 1.5 s; lifted off from 1:02.5 for 3 s; else connected.",
        ConnectionWords.Course(Reading([new(62.5, 65.5, ContactState.Lifted), new(4, 5.5, ContactState.Moving)])));

    [Fact]
    public void Many_stretches_are_added_up() => Assert.Equal(
        "lifted off 8 times, 4 s together; first at 0:00, last at 0:14; else connected.",
        ConnectionWords.Course(Reading([.. Enumerable.Range(0, 8).Select(i => new Stretch(2 * i, 2 * i + 0.5, ContactState.Lifted))])));

    private static ContactReading Reading(IReadOnlyList<Stretch> stretches) => new()
    {
        Name = "ridge",
        Kind = SignalKind.Raw,
        WindowSeconds = 0.5,
        States = [],
        NoiseFloor = 1,
        Strongest = 1,
        Hum = 0,
        Motion = 0,
        Wander = 0,
        UsableShare = 1,
        Stretches = stretches,
        During = [],
        Verdict = ContactVerdict.Connected,
        Evidence = "",
    };
}
