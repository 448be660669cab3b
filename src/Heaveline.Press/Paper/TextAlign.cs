namespace Heaveline.Press.Paper;

/// <summary>Which end of a line of text its place is.</summary>
internal enum TextAlign
{
    Start,
    Middle,
    End,
}
