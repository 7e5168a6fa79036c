using System.Threading.Channels;

namespace Graspwright.Workshop.Signals;

/// <summary>Takes what a line sends off it as fast as it comes, so that nothing is lost while something else is looked at.</summary>
public static class LineReading
{
    /// <summary>Reads until the line ends or vanishes; then nothing more comes into the queue.</summary>
    /// <param name="line">The line.</param>
    /// <param name="queue">Where the bytes go, each piece with the time at which it came [s].</param>
    /// <param name="seconds">Time since the beginning [s].</param>
    /// <returns>Why it ended; empty where the line ended by itself.</returns>
    public static string All(Stream line, ChannelWriter<(byte[] Bytes, double At)> queue, Func<double> seconds)
    {
        ArgumentNullException.ThrowIfNull(line);
        ArgumentNullException.ThrowIfNull(queue);
        ArgumentNullException.ThrowIfNull(seconds);
        byte[] buffer = new byte[1 << 14];
        try
        {
            for (int n = line.Read(buffer); n > 0; n = line.Read(buffer))
            {
                queue.TryWrite((buffer[..n], seconds()));
            }

            return "";
        }
        catch (Exception gone) when (gone is IOException or ObjectDisposedException or UnauthorizedAccessException)
        {
            return "The port vanished; what came until then is kept.";
        }
        finally
        {
            queue.Complete();
        }
    }
}
