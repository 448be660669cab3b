using Heaveline.Measures;

namespace Heaveline.Gpu;

/// <summary>Lets studies of many passes run on the graphics processors of this machine.</summary>
public static class Devices
{
    /// <summary>
    /// From now on batches of passes run there, those of 500 000 passes and more, or all that can; what cannot is run on the processor, and said.
    /// </summary>
    /// <param name="all">Whether small batches run there too, and it is said where there is no such device.</param>
    /// <param name="word">Is told, each reason once, why passes were left to the processor.</param>
    public static void Choose(bool all, Action<string> word)
    {
        ArgumentNullException.ThrowIfNull(word);
        MeasurePlace.Choose(all ? 1 : MeasureDevices.Worth, word, () =>
        {
            var devices = MeasureDevices.OfMachine(out var why);
            if (devices is null && all)
            {
                word($"{why}: all passes run on the processor");
            }

            return devices;
        });
    }
}
