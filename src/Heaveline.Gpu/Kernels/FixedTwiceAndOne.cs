namespace Heaveline.Gpu.Kernels;

/// <summary>Twice another number, and one.</summary>
internal struct FixedTwiceAndOne<THalf> : IFixed
    where THalf : IFixed
{
    public static int Value => (2 * THalf.Value) + 1;
}
