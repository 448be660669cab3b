namespace Heaveline.Bench;

internal static class Program
{
    private static int Main() => 0;
}
