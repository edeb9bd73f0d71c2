using MudBlazor;

namespace Mastwright.Workbench.Components;

/// <summary>The component library in this project's clothes: its colours come from pages.css, its font from the pictures, its corners are square.</summary>
internal static class PageTheme
{
    internal static MudTheme Mud { get; } = new()
    {
        LayoutProperties = new() { DefaultBorderRadius = "2px" },
        Typography = new()
        {
            Default = new DefaultTypography { FontFamily = ["Mastwright Sans", "sans-serif"], FontSize = "0.875rem", LineHeight = "1.4", LetterSpacing = "normal" },
            Button = new ButtonTypography { FontFamily = ["Mastwright Sans", "sans-serif"], FontSize = "0.8125rem", FontWeight = "400", TextTransform = "none", LetterSpacing = "normal" },
        },
    };
}
