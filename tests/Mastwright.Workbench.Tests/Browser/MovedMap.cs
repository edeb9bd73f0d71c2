namespace Mastwright.Tests.Workbench.Browser;

/// <summary>Tests of the map under pointer, keyboard and attack, with a demo of their own: they run beside those of <see cref="WrittenPages"/>.</summary>
[CollectionDefinition(Name)]
public sealed class MovedMap : ICollectionFixture<WrittenDemo>
{
    internal const string Name = "a map that is moved";
}
