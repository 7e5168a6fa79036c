using System.Text.Json;
using Graspwright.Page.Works;
using Graspwright.Workshop.Signals;

namespace Graspwright.Page.Signals;

/// <summary>One channel as it is now.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Words">How it is connected, or that it acts.</param>
/// <param name="Level">Height of its envelope as a share of the picture, 0 to 1.</param>
/// <param name="Acted">How often it has acted; <see langword="null"/> = it has no level yet.</param>
public readonly record struct LiveChannel(string Name, string Words, double Level, long? Acted);

/// <summary>What comes from the board now.</summary>
/// <param name="Channels">The channels.</param>
public sealed record LiveState(IReadOnlyList<LiveChannel> Channels) : ITellsMore
{
    /// <summary>As it is now.</summary>
    /// <param name="listening">What listens.</param>
    public static LiveState Of(Listening listening)
    {
        ArgumentNullException.ThrowIfNull(listening);
        return new([.. listening.Now().Select(c => new LiveChannel(c.Name, c.Words, c.Level, c.Activations))]);
    }

    /// <inheritdoc/>
    public void Tell(Utf8JsonWriter json)
    {
        ArgumentNullException.ThrowIfNull(json);
        json.WriteStartArray("channels");
        foreach (LiveChannel channel in Channels)
        {
            json.WriteStartObject();
            json.WriteString("name", channel.Name);
            json.WriteString("words", channel.Words);
            json.WriteNumber("level", Math.Round(channel.Level, 3));
            if (channel.Acted is { } acted)
            {
                json.WriteNumber("acted", acted);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
