module steadyneedle

go 1.26
