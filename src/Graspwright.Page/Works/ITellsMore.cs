using System.Text.Json;

namespace Graspwright.Page.Works;

/// <summary>What a long work has to tell the page on the way, besides how far it is.</summary>
public interface ITellsMore
{
    /// <summary>Writes it into the message to the page.</summary>
    /// <param name="json">The message, an open object.</param>
    void Tell(Utf8JsonWriter json);
}
